import { fixture, html } from '@open-wc/testing';
import '../../../components/handback/define.js';
import type { PossessionHandback } from '../../../components/handback/handback.js';
import { addMinutes, isoText } from '../../../src/calendar/index.js';
import type { ShiftEntry, ShiftEvent, ShiftLog } from '../../../src/engine/index.js';
import { handback, type HandbackOptions } from '../../../src/risk/index.js';
import { deckPlan, deckVisits } from './deck-night.js';
import { aWindow, zone } from './samples.js';

// The deck's night 100 minutes on: cutting has begun, and two decisions are to be taken.

export const night = aWindow('H1', '2027-02-09 23:00', '2027-02-10 05:00');
export const start = night.start;
export const plan = deckPlan([night]);
export const placements = deckVisits(night);
export const options: HandbackOptions = {
  seed: 7,
  runs: 1000,
  commitments: [
    { activity: 'CUT', irreversible: true, reinstatementMinutes: 60 },
    { activity: 'SET', irreversible: false, reinstatementMinutes: 40 },
  ],
  goPoints: [
    { id: 'G1', window: 'H1', name: 'Begin to cut?', holder: 'Site manager', before: 'CUT' },
    {
      id: 'G2',
      window: 'H1',
      name: 'Carry on setting?',
      holder: '',
      at: isoText(addMinutes(start, 225), zone),
    },
  ],
};
export const now = addMinutes(start, 100);
export const live = handback(plan, night, placements, {
  ...options,
  at: now,
  actuals: [
    { step: 'Place protection', startedAt: start, finishedAt: addMinutes(start, 40) },
    { activity: 'CUT', startedAt: addMinutes(start, 45) },
  ],
});
export const entry = (
  id: string,
  minutes: number,
  event: ShiftEvent,
  corrects?: string,
): ShiftEntry => ({
  id,
  at: addMinutes(start, minutes),
  enteredAt: addMinutes(start, minutes + 1),
  by: 'J. Marl',
  event,
  ...(corrects !== undefined && { corrects }),
});
export const log: ShiftLog = [
  entry('a', 0, { kind: 'granted' }),
  entry('b', 40, { kind: 'step-finished', step: 'Place protection', stage: 'lead-in' }),
  entry('c', 45, { kind: 'activity-started', activity: 'CUT' }),
];

export const placed = {
  commitments: [],
  goPoints: [
    { id: 'G1', window: 'H1', name: 'Begin to cut?', holder: 'Site manager', before: 'CUT' },
    {
      id: 'G2',
      window: 'H1',
      name: 'Carry on setting?',
      holder: '',
      at: '2027-02-10T02:45:00+00:00',
    },
    { id: 'G3', window: 'W9', name: 'Lift the rail?', holder: 'Gang leader', before: 'X' },
  ],
};

export const shown = (over: Partial<PossessionHandback> = {}): Promise<PossessionHandback> =>
  fixture(
    html`<possession-handback
      .results=${over.results ?? [live]}
      .windows=${over.windows ?? [night]}
      .selectedWindow=${over.selectedWindow ?? 'H1'}
      .live=${true}
      .now=${over.now ?? now}
      .log=${over.log ?? log}
      .decisions=${over.decisions ?? null}
    ></possession-handback>`,
  );

export const ENTRY = 'possession-handback-entry';

export const typeTime = (form: Element, clock: string): void => {
  form.querySelector<HTMLInputElement>('input.clock')!.value = clock;
};
