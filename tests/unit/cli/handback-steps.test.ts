import { describe, expect, it } from 'vitest';
import { readArguments } from '../../../src/cli/arguments.js';
import { handback } from '../../../src/cli/verbs/handback.js';
import { withinSteps } from '../../../src/engine/handback/handback-steps.js';
import { addMinutes } from '../../../src/calendar/index.js';
import {
  anActivity,
  aPlan,
  aWindow,
  nightStart,
  placed,
  whole,
} from '../../helpers/handback-plan.js';

const nights = [0, 1, 2, 3].map((at) =>
  aWindow({
    id: `W${at}`,
    start: addMinutes(nightStart, at * 1440),
    end: addMinutes(nightStart, at * 1440 + 480),
  }),
);
const plan = {
  ...aPlan(nights.map(({ id }) => anActivity(`A-${id}`, whole(90, 80, 150), { window: id }))),
  windows: nights,
};
const asked = readArguments([
  ...['handback', '--windows', 'w.csv', '--work', 'x.csv'],
  ...['--seconds', '5', '--runs', '100'],
]);
const within = (steps?: number) =>
  handback(
    plan,
    asked,
    { commitments: [], goPoints: [] },
    nightStart,
    steps === undefined ? {} : { steps },
  );

describe('the handback of more windows than there are steps for', () => {
  it('says of each past them that it was not worked out, and nothing else', () => {
    const { json, notes } = within(1);
    expect(json.windows.map((window) => window.window)).toEqual(['W0']);
    expect(json.notWorkedOut).toEqual(['W1', 'W2', 'W3']);
    expect(json.notPlaced).toEqual([]);
    expect(notes!.find((note) => note.code === 'not-worked-out')!.text).toContain('W1, W2, W3');
  });

  it('is that of all of them where the steps do', () => {
    const { json, notes } = within();
    expect(json.windows.map((window) => window.window)).toEqual(['W0', 'W1', 'W2', 'W3']);
    expect(json).not.toHaveProperty('notWorkedOut');
    expect(notes!.map((note) => note.code)).not.toContain('not-worked-out');
    expect(within(1).json.windows[0]).toEqual(json.windows[0]);
  });
});

describe('windows within some steps', () => {
  const placements = [
    placed('A', 0, 60),
    { ...placed('B', 0, 60), window: 'W1', units: 8 },
    { ...placed('C', 0, 60), window: 'W2' },
  ].map((placement, at) => (at === 0 ? { ...placement, window: 'W0' } : placement));
  const count = (runs: number, steps: number): number =>
    withinSteps(
      { ...plan, rules: { ...plan.rules, leadIn: [], leadOut: [] } },
      nights.slice(0, 3),
      placements,
      runs,
      steps,
    ).windows.length;

  it('are counted by runs, what-ifs of them and pieces', () => {
    // One piece, ten and one, each five times.
    expect(count(1, 54)).toBe(1);
    expect(count(1, 55)).toBe(2);
    expect(count(1, 59)).toBe(2);
    expect(count(1, 60)).toBe(3);
  });

  it('are counted with 10,000 runs of each what-if at most', () => {
    expect(count(100_000, 140_000 * 11 - 1)).toBe(1);
    expect(count(100_000, 140_000 * 11)).toBe(2);
  });
});
