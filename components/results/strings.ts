import { countText } from '../shared/format.js';
import { verdictText } from '../shared/verdict-words.js';

/** Words of what is worked out beside the rows of a table, and of the work in a window. */
export const defaultStrings = {
  /** The language of these words. */
  lang: 'en',
  notYet: 'not yet',
  none: 'none',
  nothing: 'nothing',
  gross: 'gross',
  usable: 'usable',
  usableIsolated: 'usable, isolated',
  noIsolation: 'no isolation',
  holds: 'what is in it',
  clear: 'clear at',
  margin: 'margin',
  chance: 'chance on time',
  verdict: 'verdict',
  verdicts: verdictText,
  pieceOf: (activity: string, units: number) => `${activity} (${countText(units, 'unit')})`,
  fromTo: (from: string, to: string) => `${from} to ${to}`,
  fits: 'package fits',
  fitsNone: 'no window whole',
  windows: (count: number) => countText(count, 'window'),
  plannedIn: 'planned in',
  plannedStart: 'planned start',
  plannedFinish: 'planned finish',
  totalFloat: 'total float',
  programmeFloat: 'programme float',
  noKeyDate: 'no key date',
  noFinish: 'no finish',
  leftOver: (why: string) => `left over: ${why}`,
  noWindow: 'no window',
  nothingLeft: 'nothing left to do',
  planned: 'planned',
  plannedMet: 'planned, key date met',
  plannedMissed: 'planned, key date missed',
  outside: 'outside',
};

export type ResultStrings = Readonly<typeof defaultStrings>;
