import { describe, expect, it } from 'vitest';
import { MINUTE } from '../../../../src/calendar/index.js';
import { fewestCauses } from '../../../../src/planner/fit/causes.js';
import { fitAll, fitOne, type Reason } from '../../../../src/planner/fit/index.js';
import type { Plan } from '../../../../src/model/index.js';
import { createRandom } from '../../../../src/planner/random.js';
import { oracle } from '../../../helpers/oracle.js';
import { activity, plan, resource, window } from '../../../helpers/plan-builders.js';
import { randomPlan } from '../../../helpers/random-plan.js';

const cases = Number(process.env['CAUSE_CASES'] ?? 250);

describe('fewestCauses', () => {
  it('is enough, needs each of its causes, and is the smallest where one or two will do', () => {
    const random = createRandom(11);
    for (let turn = 0; turn < 500; turn += 1) {
      const all = Array.from({ length: 2 + random.below(7) }, (_, i) => i);
      // Sets of causes of which each is enough for a no.
      const enough = Array.from({ length: 1 + random.below(4) }, () => {
        const set = all.filter(() => random.below(3) === 0);
        return set.length > 0 ? set : [random.below(all.length)];
      });
      const fits = (some: readonly number[]): boolean =>
        !enough.some((set) => set.every((value) => some.includes(value)));
      const { causes, proven } = fewestCauses(all, (some) => ({ fits: fits(some), proven: true }));
      expect(proven).toBe(true);
      expect({ enough, causes, fits: fits(causes) }).toEqual({ enough, causes, fits: false });
      for (const cause of causes)
        expect(fits(causes.filter((other) => other !== cause))).toBe(true);
      const least = Math.min(...enough.map((set) => set.length));
      if (least === 1 || (least === 2 && all.length <= 6)) expect(causes).toHaveLength(least);
    }
  });
});

describe('reasons of a no', () => {
  it('come with the smallest set of causes that is enough first', () => {
    // Two cranes side by side would do; so would a later end. One crane is there, from the hour on.
    const document = plan({
      windows: [window('P1', 0, 150)],
      activities: [
        activity('A1', 100, { resources: { crane: 1 } }),
        activity('A2', 100, { resources: { crane: 1 }, keyDate: 140 }),
      ],
      resources: [resource('crane', [{ capacity: 1 }]), resource('gang', [{ capacity: 1 }])],
    });
    const { reasons } = fitOne(document, 'W1', 'P1');
    expect(reasons.map((reason) => [reason.code, reason.enough])).toEqual([
      ['too-short', 'proven'],
      ['resource-short', 'proven'],
    ]);
    expect(reasons[1]!.resources).toEqual(['crane']);
  });

  it(`are enough by themselves and each of them is needed, in ${cases} random plans`, () => {
    let looked = 0;
    for (let seed = 1; seed <= cases; seed += 1) {
      const { plan: document, step } = randomPlan(seed + 50_000);
      for (const verdict of fitAll(document)) {
        const marked = verdict.reasons.filter((reason) => reason.enough === 'proven');
        if (marked.length === 0) continue;
        expect(verdict.reasons.slice(0, marked.length)).toEqual(marked);
        const names = new Set(marked.flatMap(causesOf));
        const fits = (some: ReadonlySet<string>): boolean => {
          const only = onlyWith(document, verdict.package, verdict.window, some);
          const best = oracle(only, ['key-dates', 'finish', 'fewest-windows'], step);
          return best.unplaced === 0 && best.values['key-dates'] === 0;
        };
        expect({ seed, names, fits: fits(names) }).toEqual({ seed, names, fits: false });
        for (const name of names) {
          const others = new Set([...names].filter((other) => other !== name));
          expect({ seed, names, one: name, fits: fits(others) }).toEqual({
            seed,
            names,
            one: name,
            fits: true,
          });
        }
        looked += 1;
      }
    }
    expect(looked).toBeGreaterThan(cases / 20);
  });
});

function causesOf(reason: Reason): string[] {
  if (reason.code === 'too-short' || reason.code === 'no-usable-stretch') return ['end'];
  return reason.code.startsWith('resource-')
    ? (reason.resources ?? []).map((name) => `resource ${name}`)
    : [reason.code];
}

/** The plan of one package in one window with nothing in the way but some causes. */
function onlyWith(
  document: Plan,
  packageName: string,
  windowId: string,
  causes: ReadonlySet<string>,
): Plan {
  const booked = document.windows.find((item) => item.id === windowId)!;
  // Into the next night, where a curfew or a resource lets work go on at night alone.
  const longer = causes.has('end') ? 0 : 2100;
  return {
    ...document,
    windows: [{ ...booked, end: booked.end + longer * MINUTE }],
    resources: document.resources.filter((item) => causes.has(`resource ${item.id}`)),
    activities: document.activities
      .filter((item) => item.package === packageName)
      .map(({ notBefore, keyDate, ...one }) => ({
        ...one,
        ...(notBefore !== undefined && causes.has('not-before') ? { notBefore } : {}),
        ...(keyDate !== undefined && causes.has('key-date') ? { keyDate } : {}),
      })),
  };
}
