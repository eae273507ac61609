import { fixture, html } from '@open-wc/testing';
import '../../../components/handback/define.js';
import type { PossessionHandback } from '../../../components/handback/handback.js';
import { addMinutes } from '../../../src/calendar/index.js';
import type { HandbackResult } from '../../../src/engine/types.js';
import { handback, type HandbackOptions, type ShiftLog } from '../../../src/risk/index.js';
import { deckPlan, deckVisits } from './deck-night.js';
import { aWindow } from './samples.js';

// The deck's work on three nights: one long enough, one that eats into the margin, one that overruns.

export const held = aWindow('H1', '2027-02-09 23:00', '2027-02-10 05:00');
export const eaten = aWindow('E2', '2027-02-10 23:00', '2027-02-11 03:20');
export const late = aWindow('L3', '2027-02-11 23:00', '2027-02-12 02:50');
export const windows = [held, eaten, late];

const plan = deckPlan(windows);
const placements = windows.flatMap(deckVisits);
const options: HandbackOptions = {
  seed: 7,
  runs: 2000,
  commitments: [{ activity: 'CUT', irreversible: true, reinstatementMinutes: 60 }],
};
export const results: readonly HandbackResult[] = windows.map((window) =>
  handback(plan, window, placements, options),
);
/** Two hours and three quarters into the first window, with the cutting barely begun. */
export const moment = addMinutes(held.start, 165);
export const liveResult = handback(plan, held, placements, {
  ...options,
  at: moment,
  actuals: [
    { step: 'Place protection', startedAt: held.start, finishedAt: addMinutes(held.start, 60) },
    { activity: 'CUT', startedAt: addMinutes(held.start, 150) },
  ],
});
/** The same night at its start, with nothing written down. */
export const beforeGrant = handback(plan, held, placements, { ...options, at: held.start });
export const log: ShiftLog = [
  {
    id: 'a',
    at: held.start,
    enteredAt: addMinutes(held.start, 1),
    by: 'J. Marl',
    event: { kind: 'step-started', step: 'Place protection' },
  },
  {
    id: 'b',
    at: addMinutes(held.start, 66),
    enteredAt: addMinutes(held.start, 67),
    by: 'J. Marl',
    event: { kind: 'step-finished', step: 'Place protection' },
  },
  {
    id: 'c',
    at: addMinutes(held.start, 60),
    enteredAt: addMinutes(held.start, 70),
    by: 'R. Fenn',
    event: { kind: 'step-finished', step: 'Place protection' },
    corrects: 'b',
  },
];

export const shown = (selected = 'H1'): Promise<PossessionHandback> =>
  fixture(
    html`<possession-handback
      .results=${results}
      .windows=${windows}
      .selectedWindow=${selected}
    ></possession-handback>`,
  );
export const shownLive = (now = moment): Promise<PossessionHandback> =>
  fixture(
    html`<possession-handback
      .results=${[liveResult]}
      .windows=${windows}
      .selectedWindow=${'H1'}
      .now=${now}
      .log=${log}
    ></possession-handback>`,
  );
