import { describe, expect, it } from 'vitest';
import { planToChance } from '../../../src/engine/handback/plan-to-chance.js';
import { handbackOf } from '../../../src/engine/handback/handback.js';
import { importFiles } from '../../../src/engine/import/import-files.js';
import { recompute } from '../../../src/engine/index.js';
import { anActivity, aPlan, at, aWindow, rulesWith, whole } from '../../helpers/handback-plan.js';
import { emptyDocument, sampleFiles } from '../../helpers/sample.js';
import { processorMs } from '../../helpers/processor-clock.js';

const rules = rulesWith({ leadIn: [], leadOut: [], margin: { minutes: 10 } });
const windows = [
  aWindow({ id: 'W1', end: at(240) }),
  aWindow({ id: 'W2', start: at(1440), end: at(1440 + 480) }),
];
const options = { seconds: 1, seed: 1, clock: processorMs, runs: 20_000, chance: 0.95 };

describe('a plan made to a chance', () => {
  const one = anActivity('A', whole(100, 95, 160));
  const two = anActivity('B', whole(120, 110, 190), {
    after: [{ activity: 'A', from: 'finish', gapMinutes: 0 }],
  });

  it('moves work to a window that gives it time, and says what that costs', () => {
    const made = planToChance(aPlan([one, two], { rules, windows }), options);
    // Both in the first night hold the margin, and about half of such nights are late.
    expect(made.costs.windowsUsed).toEqual({ without: 1, with: 2 });
    expect(made.windows.map(({ window, reached }) => [window, reached])).toEqual([
      ['W1', true],
      ['W2', true],
    ]);
    expect(made.allocation.unplaced).toEqual([]);
    expect(made.allocation.certificate.verified).toBe(true);
  });

  it('does so without a limit of seconds too', () => {
    const { seconds: _, ...unlimited } = options;
    const made = planToChance(aPlan([one, two], { rules, windows }), unlimited);
    expect(made.costs.windowsUsed).toEqual({ without: 1, with: 2 });
    expect(made.windows.every(({ reached }) => reached)).toBe(true);
  });

  it('names a window in which it cannot be, with the margin it would need, and loses no work', () => {
    const fixed = [one, two].map((activity) => ({ ...activity, window: 'W1' }));
    const plan = aPlan(fixed, { rules, windows });
    const made = planToChance(plan, options);
    expect(made.allocation.unplaced).toEqual([]);
    expect(made.costs.unplaced).toEqual([]);
    const [only] = made.windows;
    expect(only).toMatchObject({ window: 'W1', reached: false, marginMinutes: 20 });
    // With a window longer by what is missing, the chance is there: the margin it names is enough.
    const longer = [aWindow({ id: 'W1', end: at(220 + only!.marginNeeded) })];
    const enough = handbackOf(
      { ...plan, windows: longer },
      { placements: made.allocation.placements, seed: 5, runs: 100_000 },
    )[0]!;
    expect(enough.simulation.outlook.onTime.probability).toBeGreaterThanOrEqual(0.95);
  });

  it('changes nothing where the chance is there already', () => {
    const made = planToChance(aPlan([one], { rules, windows }), options);
    expect(made.costs).toMatchObject({ windowsUsed: { without: 1, with: 1 }, keyDates: [] });
  });

  it('keeps to the minute what is kept, and names the window that it keeps short', () => {
    const plan = aPlan([one, two], { rules, windows });
    const keep = [{ activity: 'B', window: 'W1', from: at(105), to: at(225) }];
    const made = planToChance(plan, { ...options, keep });
    expect(made.allocation.placements).toContainEqual(keep[0]);
    expect(made.allocation.certificate.verified).toBe(true);
    expect(made.windows).toMatchObject([{ window: 'W1', reached: false }]);
    // Without it the same work is moved.
    const free = planToChance(plan, options).allocation.placements;
    expect(free).not.toContainEqual(keep[0]);
  });

  it('searches for no longer than it is given, however often it plans', async () => {
    const { document } = await importFiles(sampleFiles(), emptyDocument);
    const { plan } = recompute(document);
    let now = 0;
    let begun = 0;
    const clock = (): number => (now += 1);
    const counted = { ...options, seconds: 4, clock, runs: 2000, chance: 0.9 };
    const made = planToChance(plan, { ...counted, onBetter: () => (begun += 1) });
    expect(begun).toBeGreaterThan(0);
    expect(now).toBeLessThan(1.1 * 4000);
    expect(made.allocation.certificate.verified).toBe(true);
  });

  it('reaches 95 % in 50,000 runs of another seed in every window of the sample, or names it', async () => {
    const { document } = await importFiles(sampleFiles(), emptyDocument);
    const { plan } = recompute(document);
    const made = planToChance(plan, options);
    const shown = handbackOf(plan, {
      placements: made.allocation.placements,
      seed: 77,
      runs: 50_000,
    });
    const named = new Map(made.windows.map((each) => [each.window, each]));
    for (const { window, simulation } of shown) {
      const told = named.get(window)!;
      if (told.reached) expect(simulation.outlook.onTime.probability).toBeGreaterThanOrEqual(0.95);
      else expect(told.marginNeeded).toBeGreaterThan(told.marginMinutes);
    }
    expect(shown.map((each) => each.window).sort()).toEqual([...named.keys()].sort());
    expect(made.windows.filter((each) => each.reached).length).toBeGreaterThan(0);
  });
});
