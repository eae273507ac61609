import { cautions } from '../../src/model/index.js';
import { statusText } from '../shared/kinds.js';
import { countText } from '../shared/format.js';

/** Words of both elements, but for names and figures. Sentences with a figure are functions of it. */
export const defaultStrings = {
  noPlan:
    'No plan has been worked out yet. Once one has, its work is drawn here by place and time.',
  noWork: 'The plan places no work in a window on this line.',
  title: 'Where and when',
  told: 'Each field is a window: place along it, time down it. Time between windows is left out. A box is work over its place and time; a slanting line is repeated work, drawn from the lower end of its place upwards by units, since nobody says from which end it goes.',
  line: 'Line',
  allLines: 'All lines',
  status: statusText,
  windows: 'Windows',
  allWindows: 'All that hold work',
  place: 'km + m',
  pieces: (count: number) => `${countText(count, 'piece')} of work`,
  noMeeting:
    'By the places, lines and times of this plan, no two pieces stand at one place at one time.',
  meetings: (count: number) =>
    `${countText(count, 'pair stands', 'pairs stand')} at one place at one time.`,
  ofKind: {
    alone: (count: number) => `${count} where one of the two must be alone there.`,
    unsaid: (count: number) => `${count} where nobody said that both may share it.`,
    shared: (count: number) => `${count} where both may share it.`,
  },
  kinds: {
    alone: 'one must be alone',
    unsaid: 'not said to share',
    shared: 'both may share',
  },
  noPlace: (count: number) =>
    `${countText(count, 'piece says', 'pieces say')} no place and ${count === 1 ? 'is' : 'are'} taken to be everywhere.`,
  meetingTable: 'Pairs at one place at one time',
  first: 'One',
  second: 'The other',
  common: 'Place in common',
  fromTo: (from: string, to: string) => `${from} to ${to}`,
  wantedOf: (wanted: number, held: string) => `${wanted} of ${held}`,
  everywhere: 'everywhere',
  kind: 'What was said',
  table: 'The work as a table',
  work: 'Work',
  window: 'Window',
  from: 'From',
  to: 'To',
  reach: 'Place',
  lines: 'Lines',
  units: 'Units',
  wantedTitle: 'People and plant by week',
  wantedNone: 'The work of the plan asks for no people or plant.',
  wantedTold:
    'What the plan wants of each at the moment of the week with the least to spare, against what the list of resources holds then. A bar beyond the line is short.',
  wanted: 'Wanted',
  held: 'Held',
  resource: 'Resource',
  week: 'Week of',
  moment: 'At',
  most: (amount: number) => `up to ${amount}`,
  notListed: 'not listed, so not limited',
  short: (count: number) =>
    count === 0
      ? 'In no week is more wanted than is held, of what is listed.'
      : `In ${countText(count, 'week')} more is wanted than is held.`,
  wantedTable: 'The weeks as a table',
  cautions: 'Cautions',
  cautionLines: cautions,
};

export type WhereStrings = Readonly<typeof defaultStrings>;
