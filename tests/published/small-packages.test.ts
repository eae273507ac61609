// Small packages against a general mixed-integer solver. HiGHS (Huangfu and Hall, 2018, "Parallelizing the dual revised
// simplex method", as the npm package `highs`) is asked for the most time that can be left after the work, by a model of
// one variable for each moment at which so many units could begin. It shares no code with the planner; usable time of the
// plain windows used here is written down by hand.
import { createRequire } from 'node:module';
import { describe, expect, it } from 'vitest';
import { fit } from '../../src/cli/verbs/fit.js';
import type { Activity, Plan } from '../../src/model/index.js';
import { createRandom } from '../../src/planner/random.js';
import { activity, plan, resource, rules, window } from '../helpers/plan-builders.js';

// Its types speak of a module of another kind than it is.
const loadHighs = createRequire(import.meta.url)('highs') as () => Promise<{
  solve(model: string): { readonly Status: string; readonly ObjectiveValue: number };
}>;

const cases = Number(process.env['HIGHS_CASES'] ?? 15);
const step = 10;

interface Packed {
  readonly plan: Plan;
  /** Steps of the window that each activity can use. */
  readonly usable: readonly (readonly boolean[])[];
  readonly steps: number;
}

/** A package of three to six activities: gaps, plant with a limit and for a time, units, loud hours, work that is alone. */
function randomPackage(seed: number): Packed {
  const random = createRandom(seed);
  const chance = (percent: number): boolean => random.below(100) < percent;
  const steps = 9 + random.below(11);
  const leadIn = random.below(3);
  const margin = random.below(3);
  // Nothing loud in hour 1 after midnight, by UTC.
  const quiet = { from: 6, to: 12 };
  const craneFrom = chance(40) ? 2 + random.below(4) : 0;
  const n = 3 + random.below(4);
  const activities = Array.from({ length: n }, (_, i): Activity => {
    const after: string[] = [];
    for (let j = 0; j < i; j += 1)
      if (chance(25)) {
        const gap = chance(40) ? ` + ${step * (1 + random.below(3))}` : '';
        after.push(`${chance(75) ? '' : 'start of '}A${j + 1}${gap}`);
      }
    return activity(`A${i + 1}`, step * (1 + random.below(4)), {
      after,
      ...(chance(25) && { units: [2, step, chance(50) ? step : 0, 0] as const }),
      resources: { ...(chance(40) && { crane: 1 }), ...(chance(60) && { gang: 1 }) },
      loud: chance(25),
      ...(chance(20) && { occupies: 'alone' as const }),
    });
  });
  const document = plan({
    windows: [window('P1', 0, steps * step)],
    activities,
    resources: [
      resource('crane', [{ capacity: 1, from: craneFrom * step }]),
      resource('gang', [{ capacity: 2 }]),
    ],
    rules: rules({
      leadIn: leadIn * step,
      margin: margin * step,
      curfews: [{ name: 'Quiet', bars: 'loud', from: '01:00', to: '02:00' }],
    }),
  });
  const usable = activities.map((item) =>
    Array.from(
      { length: steps },
      (_, at) =>
        at >= leadIn && at < steps - margin && !(item.loud && at >= quiet.from && at < quiet.to),
    ),
  );
  return { plan: document, usable, steps };
}

/** The model in the text form that the solver reads; a variable `x_a_u_t` is 1 where `u` units of `a` begin at `t`. */
function modelOf({ plan: { activities, resources }, usable, steps }: Packed): string {
  interface Choice {
    readonly name: string;
    readonly of: number;
    readonly units: number;
    readonly from: number;
    readonly to: number;
    readonly left: number;
  }
  const wanted = activities.map(({ work }) => (work.kind === 'whole' ? 1 : work.units));
  const choices: Choice[] = activities.flatMap(({ work }, of) =>
    Array.from({ length: wanted[of]! }, (_, i) => i + 1).flatMap((units) => {
      const minutes =
        work.kind === 'whole'
          ? work.minutes
          : work.setUpMinutes + units * work.minutesPerUnit + work.makeSafeMinutes;
      const length = minutes / step;
      return Array.from({ length: steps - length + 1 }, (_, from) => from)
        .filter((from) => usable[of]!.slice(from, from + length).every(Boolean))
        .map((from) => ({
          name: `x_${of}_${units}_${from}`,
          ...{ of, units, from, to: from + length },
          left: usable[of]!.slice(from + length).filter(Boolean).length,
        }));
    }),
  );
  const rows: string[] = [];
  const row = (terms: readonly string[], rest: string): void => {
    if (terms.length > 0) rows.push(` ${terms.join(' ')} ${rest}`);
  };
  const plus = (some: readonly Choice[], by: (choice: Choice) => number): string[] =>
    some.flatMap((choice) =>
      by(choice) === 0
        ? []
        : [`${by(choice) > 0 ? '+' : '-'} ${Math.abs(by(choice))} ${choice.name}`],
    );
  const big = steps + 1;
  activities.forEach((item, of) => {
    const own = choices.filter((choice) => choice.of === of);
    // Where nothing of it finds a place the model must have no answer.
    row([...plus(own, (choice) => choice.units), '+ 0 z'], `= ${wanted[of]!}`);
    for (const choice of own) row([`+ z + ${big - choice.left} ${choice.name}`], `<= ${big}`);
    for (let at = 0; at < steps; at += 1)
      row(
        plus(
          own.filter((choice) => choice.from <= at && at < choice.to),
          () => 1,
        ),
        '<= 1',
      );
    for (const link of item.after) {
      const before = activities.findIndex((other) => other.id === link.activity);
      const gap = link.gapMinutes / step;
      for (const choice of own) {
        const done = choices.filter(
          (other) =>
            other.of === before &&
            (link.from === 'start' ? other.from : other.to) + gap <= choice.from,
        );
        // All units before it are finished; of a start, any visit has begun.
        const needed = link.from === 'start' ? 1 : wanted[before]!;
        row(
          [
            `+ ${needed} ${choice.name}`,
            ...plus(done, (other) => -(link.from === 'start' ? 1 : other.units)),
          ],
          '<= 0',
        );
      }
    }
  });
  for (let at = 0; at < steps; at += 1) {
    const going = choices.filter((choice) => choice.from <= at && at < choice.to);
    for (const { id, availability } of resources) {
      const there = availability.reduce(
        (sum, { capacity, from }) => sum + ((from ?? 0) <= at * step * 60_000 ? capacity : 0),
        0,
      );
      const users = going.filter((choice) =>
        activities[choice.of]!.resources.some((need) => need.resource === id),
      );
      row(
        plus(users, () => 1),
        `<= ${there}`,
      );
    }
    // Every activity is on the same line and place: who is alone there is alone.
    activities.forEach((item, of) => {
      if (item.occupies !== 'alone') return;
      activities.forEach((_, other) => {
        if (other === of) return;
        row(
          plus(
            going.filter((choice) => choice.of === of || choice.of === other),
            () => 1,
          ),
          '<= 1',
        );
      });
    });
  }
  const names = choices.map((choice) => choice.name).join(' ');
  return `Maximize\n z\nSubject To\n${rows.map((text, i) => ` r${i}:${text}`).join('\n')}\nBounds\n 0 <= z <= ${steps}\nBinary\n ${names}\nEnd\n`;
}

describe('small packages', () => {
  it(`fit, and leave as much time, as the solver says, in ${cases} of them`, async () => {
    const highs = await loadHighs();
    const counts = { yes: 0, no: 0 };
    for (let seed = 1; seed <= cases; seed += 1) {
      const packed = randomPackage(seed);
      const { json } = fit({ plan: packed.plan, packagesLeftOut: new Map() }) as unknown as {
        json: {
          fits: {
            fits: boolean;
            proven: boolean;
            spareMinutes: number | null;
            spareAtMost?: number;
          }[];
        };
      };
      const [told] = json.fits;
      const answer = highs.solve(modelOf(packed));
      const best = answer.Status === 'Optimal' ? Math.round(answer.ObjectiveValue) * step : null;
      expect({ seed, ...told, fits: best !== null }).toEqual({ seed, ...told });
      expect(told).toMatchObject({ proven: true });
      if (best === null) counts.no += 1;
      else {
        counts.yes += 1;
        expect({ seed, spare: told!.spareMinutes, more: told!.spareAtMost }).toEqual({
          ...{ seed, spare: best, more: undefined },
        });
      }
    }
    if (process.env['SHOW']) console.log(counts);
    expect(counts.yes).toBeGreaterThan(cases / 5);
    expect(counts.no).toBeGreaterThan(cases / 20);
  });
});
