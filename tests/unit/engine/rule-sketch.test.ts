import { describe, expect, it } from 'vitest';
import { MINUTE } from '../../../src/calendar/index.js';
import { ruleSketch, sketchWindow } from '../../../src/engine/rule-change/rule-sketch.js';
import { ruleSetSchema } from '../../../src/model/index.js';

const rules = ruleSetSchema.parse({
  schema: 1,
  name: 'Test',
  leadIn: [
    { step: 'Protect', minutes: 30 },
    { step: 'Isolate', minutes: 45, when: 'isolation', alongside: 'Set up' },
    { step: 'Set up', minutes: 20 },
  ],
  leadOut: [{ step: 'Test', minutes: 25 }],
  margin: { minutes: 40 },
});
const window = sketchWindow(0, 360, 'UTC');
const minutesOf = (isolated: boolean): (readonly [string, number, number] | string)[] =>
  ruleSketch(rules, window, { isolated, loud: false }).steps.map((step) =>
    step.at
      ? ([step.step.step, step.at.start / MINUTE, step.at.end / MINUTE] as const)
      : step.step.step,
  );

describe('rules laid in a window', () => {
  it('runs lead-in from the start, lead-out back from the margin', () => {
    expect(minutesOf(false)).toEqual([
      ['Protect', 0, 30],
      'Isolate',
      ['Set up', 30, 50],
      ['Test', 295, 320],
    ]);
  });

  it('starts a step with the one it runs alongside', () => {
    expect(minutesOf(true)[1]).toEqual(['Isolate', 30, 75]);
  });

  it('has the ledger of such a window', () => {
    const { ledger } = ruleSketch(rules, window, { isolated: true, loud: false });
    expect(ledger.usableMinutes).toBe(360 - 75 - 25 - 40);
    expect(ledger.barred).toEqual([]);
  });

  it('isolates a section where the window books none, so that isolation steps can be seen', () => {
    const bare = { ...window, isolation: [] };
    expect(ruleSketch(rules, bare, { isolated: true, loud: false }).ledger.barred).toEqual([]);
  });

  it('says by how much a window is too short', () => {
    const short = sketchWindow(0, 100, 'UTC');
    const { ledger } = ruleSketch(rules, short, { isolated: false, loud: false });
    expect(ledger.shortfallMinutes).toBe(50 + 25 + 40 - 100);
  });
});
