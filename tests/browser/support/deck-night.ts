import { addMinutes } from '../../../src/calendar/index.js';
import type { Placement } from '../../../src/planner/fit/types.js';
import {
  ruleSetSchema,
  type AccessWindow,
  type Activity,
  type Plan,
} from '../../../src/model/index.js';
import { zone } from './samples.js';

// An invented night of a bridge deck's renewal: the old deck cut out, four bearings set.

const activity = (id: string, title: string, work: Activity['work']): Activity => ({
  id,
  package: 'P1',
  title,
  after: [],
  work,
  lines: [],
  isolation: [],
  resources: [],
  loud: false,
  place: 'inside',
});

/** The deck's work in some windows, 30 minutes of lead-in and lead-out, and a margin of 45. */
export const deckPlan = (windows: readonly AccessWindow[]): Plan => ({
  zone,
  windows,
  activities: [
    activity('CUT', 'Cut out the old deck', {
      kind: 'whole',
      minutes: 90,
      spread: { low: 80, high: 130 },
    }),
    activity('SET', 'Set bearings', {
      kind: 'units',
      units: 4,
      done: 0,
      minutesPerUnit: 20,
      setUpMinutes: 10,
      makeSafeMinutes: 10,
      spread: { low: 15, high: 50 },
    }),
  ],
  resources: [],
  rules: ruleSetSchema.parse({
    schema: 1,
    name: 'Invented rules',
    leadIn: [{ step: 'Place protection', minutes: 30, low: 25, high: 50 }],
    leadOut: [{ step: 'Inspect and test', minutes: 30, low: 25, high: 60 }],
    margin: { minutes: 45 },
  }),
});

/** Both pieces of the deck's work placed in a window: clear 220 minutes after its start. */
export const deckVisits = ({ id, start }: AccessWindow): readonly Placement[] => [
  { activity: 'CUT', window: id, from: addMinutes(start, 30), to: addMinutes(start, 120) },
  {
    activity: 'SET',
    window: id,
    from: addMinutes(start, 120),
    to: addMinutes(start, 220),
    units: 4,
  },
];
