import { describe, expect, it } from 'vitest';
import { minutesBetween, type Instant } from '../../../src/calendar/index.js';
import type { Activity } from '../../../src/model/index.js';
import { handback } from '../../../src/risk/index.js';
import {
  anActivity,
  aPlan,
  at,
  aWindow,
  nightStart,
  placed,
  rulesWith,
  whole,
} from '../../helpers/handback-plan.js';

// Each figure is held against a formula: the distribution function of a triangle in closed form (from memory of any
// handbook of statistics), and what must hold for the shift to be over in time, written out by hand.

const RUNS = 10_000;
const options = { seed: 11, runs: RUNS };
const minute = (instant: Instant): number => minutesBetween(nightStart, instant);

/** P(length <= minutes) of a triangle. */
function triangle(low: number, likely: number, high: number, minutes: number): number {
  if (minutes <= low) return 0;
  if (minutes >= high) return 1;
  return minutes <= likely
    ? (minutes - low) ** 2 / ((high - low) * (likely - low))
    : 1 - (high - minutes) ** 2 / ((high - low) * (high - likely));
}

const within = (found: number, expected: number): void =>
  expect(Math.abs(found - expected)).toBeLessThan(
    4 * Math.sqrt((expected * (1 - expected)) / RUNS) + 1e-3,
  );

const noSteps = { leadIn: [], leadOut: [], margin: { minutes: 60 } };

describe('work that runs late into a curfew after its usable time', () => {
  // Cut from 300 on, 60 to 160 minutes. From 06:00 (minute 420), where the margin begins, nobody may be loud.
  const curfew = (to: string) => ({ name: 'Quiet morning', bars: 'loud', from: '06:00', to });
  const ownRun = (to: string, over: Partial<Activity> = {}) => {
    const cut = anActivity('CUT', whole(90, 60, 160), { notBefore: at(300), loud: true, ...over });
    const rules = rulesWith({ ...noSteps, curfews: [curfew(to)] });
    return handback(aPlan([cut], { rules }), aWindow(), [placed('CUT', 300, 390)], options);
  };

  it('is not finished in it: only what is over by its start is in time', () => {
    const loud = ownRun('06:50');
    within(loud.simulation.outlook.onTime.probability, triangle(60, 90, 160, 120));
    expect(minute(loud.cutOffs.find(({ kind }) => kind === 'work')!.onTimeFinish)).toBe(420);
    // Quiet work goes on in it.
    expect(ownRun('06:50', { loud: false }).simulation.outlook.onTime.probability).toBe(1);
  });

  it('waits for its end, beyond the booked end too', () => {
    // Over at 420, or begun at 540 (08:00) and so late by its length and 60 minutes.
    const { expectedOverrunMinutes, onTime } = ownRun('08:00').simulation.outlook;
    const late = 1 - triangle(60, 90, 160, 120);
    within(onTime.probability, 1 - late);
    // The mean length of those of more than 120 minutes: 120 and a third of the way to 160.
    const expected = late * (60 + 120 + 40 / 3);
    expect(Math.abs(expectedOverrunMinutes - expected)).toBeLessThan(3);
  });
});

describe('a step that starts with one before and stands last in the list', () => {
  it('holds up none of those between, however long it lasts', () => {
    const steps = (minutes: number) => [
      { step: 'Clear', minutes: 15 },
      { step: 'Inspect', minutes: 20 },
      { step: 'Tell', minutes, low: 5, high: 45, alongside: 'Clear' },
    ];
    const cut = anActivity('CUT', whole(300));
    // Cut out by 300; then Clear and Inspect for 35 minutes, beside Tell.
    const window = aWindow({ end: at(340) });
    for (const minutes of [15, 16]) {
      const rules = rulesWith({ ...noSteps, leadOut: steps(minutes) });
      const found = handback(aPlan([cut], { rules }), window, [placed('CUT', 0, 300)], options);
      within(found.simulation.outlook.onTime.probability, triangle(5, minutes, 45, 40));
      const tell = found.cutOffs.find(({ name }) => name === 'Tell')!;
      expect(minute(tell.onTimeFinish)).toBe(340);
    }
  });
});

describe('the latest start of a step that two kinds of work wait for', () => {
  it('leaves room for both: the quantile of the longer of the two', () => {
    const both = [
      anActivity('CUT', whole(60, 30, 180)),
      anActivity('LIFT', whole(60, 30, 180), { loud: true }),
    ];
    const rules = rulesWith({ ...noSteps, leadIn: [{ step: 'Protect', minutes: 30 }] });
    const { cutOffs } = handback(
      aPlan(both, { rules }),
      aWindow(),
      [placed('CUT', 30, 90), placed('LIFT', 30, 90)],
      { ...options, confidence: 0.81 },
    );
    // Both are over by then with 0.9 x 0.9: 180 - sqrt(0.1 x 150 x 120) = 137.6 minutes after Protect.
    const start = minute(cutOffs.find(({ name }) => name === 'Protect')!.chanceStart!);
    expect(Math.abs(start - (480 - 30 - 137.6))).toBeLessThan(2);
  });
});

describe('what helps most where a common factor alone makes lengths differ', () => {
  it('counts work of one length too', () => {
    const rules = rulesWith({
      ...noSteps,
      risk: { commonFactor: { low: 0.9, likely: 1, high: 1.3 } },
    });
    const cut = anActivity('CUT', whole(400));
    const found = handback(
      aPlan([cut], { rules }),
      aWindow({ end: at(420) }),
      [placed('CUT', 0, 400)],
      options,
    );
    // 400 x factor is in time up to a factor of 1.05; held at 400 it always is.
    const [most] = found.simulation.helpsMost;
    expect(most?.activity).toBe('CUT');
    within(most!.probabilityGain, 1 - triangle(0.9, 1, 1.3, 1.05));
  });
});
