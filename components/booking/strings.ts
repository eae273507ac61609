import { cautions } from '../../src/model/index.js';
import type { Milestone } from '../../src/engine/index.js';
import { statusText } from '../shared/kinds.js';
import { inTwo } from '../shared/in-two.js';

type State = Milestone['state'];

/** Every word the element says, but for names and figures. Sentences with a figure are functions of its text. */
export const defaultStrings = {
  empty: 'No window to book yet. Add windows to the plan to see by when each must be asked for.',
  title: 'Booking dates',
  rules: (name: string) => `By: ${name}`,
  state: {
    met: 'met',
    due: 'due',
    late: 'late',
    'missed at adding': 'missed at adding',
    'not needed': 'not needed',
  } as Record<State, string>,
  asOf: (moment: string) => `As of ${moment}`,
  summary: 'Milestones by state',

  show: 'Show',
  open: 'Open',
  all: 'All',
  whose: 'Whose',
  everybody: 'everybody’s',
  ofAll: (shown: string, all: string) => `${shown} of ${all} dates are listed.`,
  soon: 'Next 4 weeks',
  onlyLate: 'Only late',
  nothingShown: 'No milestone is like that.',

  strip: (weeks: number) => `Due in the next ${weeks} weeks`,
  stripTold: (due: string, late: string) => `${due} in this stretch; ${late} already late.`,
  stripEmpty: 'Nothing is due in this stretch.',
  now: 'now',

  milestone: 'Milestone',
  dueHead: 'Due',
  left: 'Time left',
  stateHead: 'State',
  ago: (time: string) => `${time} ago`,
  inTime: (time: string) => `in ${time}`,
  metLate: (time: string) => `met ${time} late`,
  by: (who: string) => `by ${who}`,
  before: {
    window: 'Counted from the window.',
    'railway week': 'Counted from the railway week.',
    'four-week period': 'Counted from the four-week period.',
    'timetable change': 'Counted from the timetable change.',
  } as Record<Milestone['before'], string>,
  inTwo,
  sources: 'Where the lead times come from',
  notInPlan: 'This window is not in the plan given.',

  days: (count: number) => (count === 1 ? '1 day' : `${count} days`),
  window: 'Window',
  windowsHead: 'Period and class of each window',
  periodHead: 'Four-week period',
  status: statusText,
  share: 'Trains hit',
  shareUnit: '% of a day’s',
  restrictionHead: 'Class of restriction',
  notSaid: 'not known',
  noShare:
    'Say how many of the day’s trains a window hits: its class follows, and the dates that hang on it.',
  twoPeriods: 'lies in two periods',

  save: 'Save as a calendar file',
  noCalendar: (why: string) =>
    `The calendar file was not made (${why}). Try it once more; if that does not help, reload the page.`,
  cautions: 'Cautions',
  cautionLines: cautions,
};

export type BookingStrings = Readonly<typeof defaultStrings>;
