import { describe, expect, it } from 'vitest';
import type { Placement, Plan } from '../../../src/model/index.js';
import { allocate } from '../../../src/planner/search/index.js';
import { handback, type Actual, type LiveOption } from '../../../src/risk/index.js';
import { lineFaults } from '../../helpers/line-check.js';
import { randomLinePlan } from '../../helpers/random-line-plan.js';

const cases = Number(process.env['LINE_CASES'] ?? 60);

/** A number from 0 to 1 that is the same for the same seed. */
const share = (seed: number): number => ((seed * 2_654_435_761) % 4_294_967_296) / 4_294_967_296;

/** What would be done of a plan by one way on from this moment of the shift. */
function goneOn(
  placements: readonly Placement[],
  window: string,
  { leaveOut, activity, units }: LiveOption,
): Placement[] {
  let left = units ?? Infinity;
  return placements.flatMap((placement) => {
    if (placement.window !== window) return [placement];
    if (leaveOut.includes(placement.activity)) return [];
    if (placement.activity !== activity || placement.units === undefined) return [placement];
    const done = Math.min(placement.units, left);
    left -= done;
    return done === 0 ? [] : [{ ...placement, units: done }];
  });
}

describe('the ways on that are offered in a shift', () => {
  it(`leave the line fit to run in ${cases} random plans, by a check that shares no code`, () => {
    let offered = 0;
    let leftOut = 0;
    for (let seed = 1; seed <= cases; seed += 1) {
      const { plan: made } = randomLinePlan(seed);
      // Half of the work may wait, by its own row: what makes good must be held to nonetheless.
      const plan: Plan = {
        ...made,
        activities: made.activities.map((activity, at) =>
          share(seed * 97 + at) < 0.5 ? { ...activity, mayWait: true } : activity,
        ),
      };
      const { placements } = allocate(plan, { effort: 0.01, clock: () => 0 });
      expect(lineFaults(plan, placements)).toEqual([]);
      for (const window of plan.windows) {
        const here = placements.filter((placement) => placement.window === window.id);
        if (here.length === 0) continue;
        const at = window.start + Math.round(share(seed) * (window.end - window.start));
        const actuals = here.flatMap((placement): Actual[] => {
          if (placement.from > at) return [];
          const finished = placement.to <= at;
          return [
            {
              activity: placement.activity,
              startedAt: placement.from,
              ...(finished && { finishedAt: placement.to }),
            },
          ];
        });
        const { live } = handback(plan, window, placements, { seed: 1, runs: 40, at, actuals });
        for (const option of live!.options) {
          offered += 1;
          leftOut += option.leaveOut.length;
          const remains = goneOn(placements, window.id, option);
          expect({ seed, window: window.id, option, faults: lineFaults(plan, remains) }).toEqual({
            seed,
            window: window.id,
            option,
            faults: [],
          });
          // Nothing that has begun is left out.
          for (const id of option.leaveOut)
            expect(actuals.some((actual) => actual.activity === id)).toBe(false);
        }
      }
    }
    expect(offered).toBeGreaterThan(cases / 2);
    expect(leftOut).toBeGreaterThan(0);
  });
});
