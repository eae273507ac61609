import type { PriceResult } from '../../src/engine/index.js';
import { headsOfCost } from '../shared/heads-of-cost.js';

/** Every word the element says, but for names and figures. Sentences with a figure are functions of its text. */
export const defaultStrings = {
  empty: 'Nothing is priced yet. Pick a window of a plan that has a price book.',
  title: 'What an overrun costs',
  minutes: 'Overrun',
  minutesExact: 'Overrun in minutes',
  unit: 'min',
  wholeMinutes: (most: string) => `A whole number of minutes from 0 to ${most}.`,
  total: 'Cost of this overrun',
  handedBack: (moment: string) => `handed back ${moment}`,
  working: 'Working it out',
  rowsOf: (minutes: string) => `The rows below are those of ${minutes}.`,
  basis: {
    'actual-loss': 'Counted: actual loss. Delay damages are shown beside it.',
    damages: 'Counted: delay damages. The loss they replace is shown beside them.',
  } as Record<PriceResult['basis'], string>,

  rows: 'By head of cost',
  head: headsOfCost,
  headOfCost: 'Head of cost',
  amount: (currency: string) => `Amount, ${currency}`,
  counted: 'counted',
  notCounted: 'not counted',
  why: 'where it comes from',
  sum: 'Total of what is counted',
  sumNotCounted: 'Not counted',
  source: 'Source',

  curve: 'Cost against minutes of overrun',
  curveTold: (asked: string, cost: string, most: string, last: string) =>
    `At ${asked} the cost is ${cost}; at ${most}, the end of the picture, ${last}.`,
  curveTable: 'The curve as a table',
  minute: 'Minutes over',
  cost: (currency: string) => `Cost, ${currency}`,
  perHead: (currency: string) => `Amounts in ${currency}, at the steps and at even minutes.`,
  asked: 'asked',
  steps: 'Where it steps',
  noSteps: 'The cost has no steps in this stretch.',
  mark: 'No.',
  from: 'From',
  what: 'What happens',
  rise: 'Total gains',
  chance: 'Chance',
  falls: (list: string) => `The cost falls at ${list}: a cancelled train frees its path.`,

  expected: 'With the chance of each overrun',
  expectedCost: 'Expected cost',
  standardError: 'standard error',
  p80: 'P80 cost',
  p95: 'P95 cost',
  pNote: (share: string) => `${share} of shifts cost no more`,
  runs: (count: string) => `From ${count} simulated shifts.`,
  noChance: 'Run the handback simulation to see the expected cost.',
  exceedance: 'Chance of costing more',
  exceedanceTold: (cost: string) => `The chance falls to 0 at ${cost}, the worst shift simulated.`,
  exceedanceTable: 'The chances as a table',
  more: 'Chance of more',

  trains: 'Trains held',
  noTrains: 'No train is late or cancelled by this overrun.',
  train: 'Train',
  due: 'Due',
  passes: 'Passes',
  late: 'Late',
  weight: 'Weight',
  charged: 'Charged minutes',
  cancelled: 'cancelled',

  keyDates: 'Key dates as planned',
  keyDate: 'Key date',
  keyDatesNote:
    'What an overrun of this window adds stands above, by head of cost; dates of other windows are not moved by it.',
  keyDateDue: (time: string) => `due ${time}`,
  keyDateEnds: (time: string) => `planned to end ${time}`,
  keyDateUnknown: 'not all of its work has a place',
  keyDateMet: 'in time',
  keyDateLate: (days: number) => `${days} ${days === 1 ? 'day' : 'days'} late`,
  keyDateUnpriced: 'no price',
  lengths: 'Length of the closure, in hours that really pass',
  clockDecides:
    'The change of the clocks decides it: by wall-clock times it would be the other way.',

  notes: 'Missing or assumed',
  cautions: 'Cautions',
  noZone: 'The window is not given: times are UTC.',
};

export type OverrunStrings = Readonly<typeof defaultStrings>;
