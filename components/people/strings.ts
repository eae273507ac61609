import { countText } from '../shared/format.js';
import { cautions } from '../../src/model/index.js';
import type { RosterBreach } from '../../src/engine/index.js';

type Change = RosterBreach['mends'][number]['change'];

/** Every word the element says, but for names and figures. */
export const defaultStrings = {
  title: 'People and hours',
  empty:
    'No roster yet. Import a table with crew, start and end to hold it to the limits on hours.',
  by: (name: string) => `Held to: ${name}`,
  example:
    'These limits are an example, not yours. Change a figure, or take them into the plan as they are.',
  take: 'Take these limits into the plan',
  turns: 'turns',
  crews: 'crews',
  breaches: 'limits broken',
  turnCount: (count: number) => countText(count, 'turn'),
  breachCount: (count: number) => countText(count, 'limit broken', 'limits broken'),
  cautions: 'Cautions',
  cautionLines: cautions,
  picture: 'The roster along the weeks',
  told: (turns: string, breaches: string) => `${turns}; ${breaches}. The table below names each.`,
  shown: 'Weeks shown',
  all: 'All',
  weeks: (count: number) => (count === 1 ? '1 week' : `${count} weeks`),
  earlier: 'Earlier',
  later: 'Later',
  broken: 'What is broken',
  nothing: 'No limit of this set is broken. That does not show that people are fit for work.',
  who: 'Crew and turn',
  limit: 'Limit',
  found: 'Found',
  mend: 'Smallest change that ends it',
  more: (count: number) => `${count} more`,
  noMend: 'No change of one turn ends it without another breach.',
  tried: 'Each change was made on the roster and the roster checked again.',
  changes: {
    'finish earlier': (turn: string, time: string) => `${turn}: finish ${time} earlier`,
    'start later': (turn: string, time: string) => `${turn}: start ${time} later`,
    'move earlier': (turn: string, time: string) => `${turn}: move ${time} earlier`,
    'move later': (turn: string, time: string) => `${turn}: move ${time} later`,
    'give to': (turn: string, crew: string) => `${turn}: give it to ${crew}`,
    drop: (turn: string) => `${turn}: drop it`,
  } satisfies Record<Change, (turn: string, detail: string) => string>,
  make: 'Make this change',
  makeAll: (count: number) => (count === 1 ? 'Make this one change' : `Make all ${count} changes`),
  competence:
    'The roster names no competence for this turn: whether that crew has it is not checked.',
  competences:
    'The roster names no competence for some of these turns: whether the crews have it is not checked.',
  holds: (crew: string, names: string) => `On the roster ${crew} holds: ${names}.`,
  together: 'To mend the whole roster',
  left: (count: number) =>
    count === 0
      ? 'After these the roster breaks no limit.'
      : `${count} breaches remain after these.`,
  clocks: 'Clocks change during these turns',
  clockTurn: (id: string, real: string, shown: string) =>
    `${id}: ${real} of work, ${shown} by the clock`,
  windows: 'Crews that each window takes',
  window: 'Window',
  needed: 'Crews needed',
  changeovers: 'Handing over',
  rostered: 'On the roster',
  unmanned: 'Not manned',
  nobody: 'nobody',
  manned: 'none of it',
  limits: 'The limits',
  another: 'Set of limits',
  travel: 'Travel to and from work',
  travelCounted: 'counted as duty',
  travelNot: 'not counted',
  /** After what was found. */
  notAllowed: (allowed: string) => `, not ${allowed}`,
  aDay: (hours: string) => `${hours} a day`,
  aWeek: (hours: string) => `${hours} a week`,
  units: { turns: 'turns', nights: 'nights', days: 'days' },
  count: {
    turns: (count: number) => countText(count, 'turn'),
    nights: (count: number) => countText(count, 'night'),
    days: (count: number) => countText(count, 'day'),
  },
};

export type PeopleStrings = Readonly<typeof defaultStrings>;
