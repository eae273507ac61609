import { defaultLinkStrings } from '../../store/share-link.js';
import { defaultSalvageStrings } from '../../store/salvage-text.js';
import { defaultSaveStrings } from '../../store/save-state.js';
import { countText } from '../../shared/format.js';

/** Words of the menu of the plan, of what is kept on this device, and of pages for a meeting. */
export const defaultStrings = {
  thisPlan: 'This plan',
  name: 'Name',
  holidays: 'Public holidays',
  set: 'Set',
  nameChanged: 'name and holidays changed',
  saveFile: 'Save a file',
  asCsv: 'Tables as CSV',
  asWorkbook: 'Tables as a workbook',
  copyLink: 'Copy a link',
  print: 'Print what is shown',
  holdsAll:
    'A file or a link holds the whole plan. A link is read by the page itself and sent nowhere.',
  planOfWork: 'The plan of work',
  planAsWorkbook: 'As a workbook',
  planAsCsv: 'As CSV',
  planAsCalendar: 'As a calendar',
  fileNotWritten: (why: string) => `The file could not be written: ${why}`,
  tablesNotWritten: (why: string) => `The tables could not be written: ${why}`,
  planNotWritten: (why: string) => `The plan of work could not be written: ${why}`,
  reportNotWritten: (why: string) => `The report could not be written: ${why}`,
  noPlanToSave: 'There is no plan of work to save yet.',
  linkCopied: (size: string) => `The link is copied. ${size}`,
  linkInAddress: (size: string) =>
    `The browser would not copy it: the link stands in the address line. ${size}`,

  setAside: 'Set aside',
  asideTold:
    'Two people or tabs wrote in one place without knowing of each other: the later value stands. Nothing is lost: put the other back, or let it go.',
  wrote: (who: string, value: string, at: string) => `${who} wrote ${value} at ${at};`,
  nobody: 'Somebody without a name',
  nothing: 'nothing',
  placeGone: 'the place is gone',
  stands: (value: string) => `${value} stands`,
  putBack: 'Put it back',
  letGo: 'Let it go',
  makeAgain: 'Make it again',
  row: (row: number) => ` row ${row}`,

  onDevice: 'Plans on this device',
  damagedEntry: 'a plan whose entry is damaged',
  shown: 'shown',
  open: 'Open',
  delete: 'Delete',
  newPlan: 'A new plan',
  reallyDelete: (name: string) => `Delete ${name} from this device for good?`,
  it: 'it',

  notKeptYet: 'Not kept yet',
  cannotOpen: (why: string) => `The plan cannot be opened: ${why}`,
  cameUnreadable: 'What came is no plan that can be read.',
  leftOut: (where: string, fault: string, rest: string) =>
    `Left out of the plan by this change: ${where}. ${fault}${rest}`,
  moreFaults: (count: number) => ` And ${countText(count, 'more fault')}.`,
  tableLabel: (table: string) => `${table}, as typed`,

  workingItOut: 'Working it out.',
  noPlanOfWork: 'There is no plan of work yet.',
  changesSince: 'Changes since',
  planOfWorkAs: 'The plan of work as',
  workbook: 'a workbook',
  calendar: 'a calendar',
  howFar: 'How far to look ahead',
  weeks: (count: number) => countText(count, 'week'),
  pageNotMade: (why: string) => `The page could not be made: ${why}`,

  save: defaultSaveStrings,
  link: defaultLinkStrings,
  salvage: defaultSalvageStrings,
};

export type FileStrings = Readonly<typeof defaultStrings>;
