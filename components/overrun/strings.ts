import { cautions } from '../../src/model/index.js';
import { headTitles, type PriceResult } from '../../src/engine/index.js';

/** All texts of the element, except names and figures. Sentences with a figure are functions of its text. */
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
  head: headTitles,
  headOfCost: 'Head of cost',
  amount: (currency: string) => `Amount, ${currency}`,
  counted: 'counted',
  notCounted: 'not counted',
  why: 'where it comes from',
  sum: 'Total of what is counted',
  sumNotCounted: 'Not counted',
  source: 'Source',

  curve: 'Cost against minutes of overrun',
  minute: 'Minutes over',
  cost: (currency: string) => `Cost, ${currency}`,
  chanceLater: 'Chance of being later',
  steps: 'Where it steps',
  noSteps: 'The cost has no steps in this stretch.',
  mark: 'No.',
  from: 'From',
  what: 'What happens',
  rise: 'Total gains',
  chance: 'Chance',
  falls: (list: string) => `The cost falls at ${list}: a cancelled train frees its path.`,

  expected: 'What an overrun is expected to cost',
  expectedCost: 'Expected cost of an overrun',
  expectedNote:
    'The mean over all simulated shifts, those on time included. It includes what the plan costs even without an overrun: a speed restriction it leaves, a key date it misses. Not included: plant and people as planned, booking and work moved are in Options.',
  standardError: 'standard error',
  p50: 'P50 cost of an overrun',
  p80: 'P80 cost of an overrun',
  p95: 'P95 cost of an overrun',
  pNote: (share: string) => `${share} of shifts cost no more`,
  runs: (count: string) => `From ${count} simulated shifts.`,
  noChance: 'Run the handback simulation to see the expected cost.',
  exceedance: 'Chance of costing more',
  noSpread: 'Every simulated shift costs the same.',
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
    'What an overrun of this window adds is above, by head of cost; it does not move dates of other windows.',
  keyDateDue: (time: string) => `due ${time}`,
  keyDateEnds: (time: string) => `planned to end ${time}`,
  keyDateUnknown: 'not all of its work has a place',
  keyDateMet: 'in time',
  keyDateLate: (days: number) => `${days} ${days === 1 ? 'day' : 'days'} late`,
  keyDatesMet: (count: number) =>
    `${count} ${count === 1 ? 'key date is' : 'key dates are'} in time`,
  keyDateUnpriced: 'no price',
  lengths: 'Length of the closure, in hours that really pass',
  clockDecides: 'The clock change decides: by clock times the answer would be the opposite.',

  sideBySide: 'Overruns side by side',
  lengthsAsked: 'Minutes late, up to twelve',
  lengthsRefused: (most: string) =>
    `Whole minutes from 0 to ${most}, apart by commas: 45, 90, 180.`,
  compare: 'Compare',
  costNothing: (count: number) => `${count} ${count === 1 ? 'head costs' : 'heads cost'} nothing`,
  nextMinute: (text: string, mean: string) =>
    `The next minute costs ${text}; the next quarter of an hour ${mean} a minute.`,
  report: 'Report',

  onSite: 'Plant and people on site',
  onSiteNote:
    'Each is owed from its call to its departure, for its least hours at least, whatever the overrun. An overrun adds the time from the booked end for those whose own work ends last, or who stay by the price book; the margin before it is in neither sum.',
  resource: 'Resource',
  number: 'Number',
  called: 'Called',
  lastWork: 'Last work ends',
  leaves: 'Leaves',
  owed: 'Owed anyway',
  added: 'This overrun adds',
  asPlanned: 'as the plan says',
  afterWork: 'after its work',
  atHandback: 'at handback',

  notPriced: 'Not priced',
  notes: 'Assumed',
  cautions: 'Cautions',
  cautionLines: cautions,
  noZone: 'The window is not given: times are UTC.',
};

export type OverrunStrings = Readonly<typeof defaultStrings>;
