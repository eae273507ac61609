import { describe, expect, it } from 'vitest';
import { MINUTE } from '../../../src/calendar/index.js';
import { minutesInOneVisit, type Plan } from '../../../src/model/index.js';
import type { Placement } from '../../../src/planner/fit/index.js';
import { allocate } from '../../../src/planner/search/index.js';
import { verify } from '../../../src/verify/index.js';
import { createRandom } from '../../../src/planner/random.js';
import { randomPlan } from '../../helpers/random-plan.js';
import { activity, plan, resource, rules, window } from '../../helpers/plan-builders.js';
import { processorMs } from '../../helpers/processor-clock.js';

const clock = processorMs;

/** A plan in which every kind of fault can be planted, with a good answer. */
function sound(): { plan: Plan; placements: readonly Placement[] } {
  const document = plan({
    windows: [
      window('P1', 0, 480, { lines: ['up'], isolation: ['S1'] }),
      window('P2', 1440, 480, { lines: ['up'] }),
      window('P3', 2880, 480, { status: 'withdrawn' }),
    ],
    activities: [
      activity('A1', 60, { resources: { crane: 1 }, isolation: ['S1'], lines: ['up'] }),
      activity('A2', 90, { resources: { crane: 1 }, after: ['A1 + 30'] }),
      activity('A3', 0, { units: [6, 40, 20, 10], after: ['A2'] }),
      activity('A4', 60, { loud: true, window: 'P2' }),
      activity('A5', 30, { notBefore: 1440 }),
      activity('A6', 120, { place: 'outside' }),
    ],
    resources: [resource('crane', [{ capacity: 1, from: 0, to: 600 }])],
    rules: rules({
      leadIn: 30,
      leadOut: 20,
      margin: 25,
      curfews: [{ name: 'Quiet', bars: 'loud', from: '00:00', to: '02:00' }],
    }),
  });
  return { plan: document, placements: allocate(document, { seconds: 1, clock }).placements };
}

const shift = (placement: Placement, minutes: number): Placement => ({
  ...placement,
  from: placement.from + minutes * MINUTE,
  to: placement.to + minutes * MINUTE,
});

describe('verify', () => {
  const good = sound();
  const change = (id: string, by: (placement: Placement) => Placement | Placement[]): string[] => {
    const placements = good.placements.flatMap((placement) =>
      placement.activity === id ? by(placement) : placement,
    );
    return verify(good.plan, { placements }).map((fault) => fault.code);
  };

  it('finds nothing wrong with a good plan', () => {
    expect(good.placements.map((placement) => placement.activity)).toContain('A3');
    expect(verify(good.plan, { placements: good.placements })).toEqual([]);
  });

  it.each<[string, string, string, (placement: Placement) => Placement | Placement[]]>([
    ['work before its predecessor', 'link', 'A2', (placement) => shift(placement, -30)],
    ['two pieces on one crane', 'resource', 'A2', (placement) => shift(placement, -70)],
    ['a predecessor left out', 'link', 'A1', () => []],
    ['work in the lead-in', 'lead-in', 'A1', (placement) => shift(placement, -10)],
    ['work past the booked end', 'outside-window', 'A4', (placement) => shift(placement, 480)],
    [
      'work in another window than fixed',
      'fixed-elsewhere',
      'A4',
      (placement) => ({ ...placement, window: 'P1' }),
    ],
    [
      'work in a withdrawn window',
      'withdrawn',
      'A5',
      (placement) => ({ ...shift(placement, 1440), window: 'P3' }),
    ],
    [
      'work without its isolation',
      'isolation',
      'A1',
      (placement) => ({ ...shift(placement, 1440), window: 'P2' }),
    ],
    [
      'work before it may begin',
      'not-before',
      'A5',
      (placement) => ({ ...shift(placement, -1440), window: 'P1' }),
    ],
    [
      'inside work without a window',
      'place',
      'A5',
      (placement) => ({ ...placement, window: null }),
    ],
    ['outside work in a window', 'place', 'A6', (placement) => ({ ...placement, window: 'P1' })],
    [
      'whole work in two pieces',
      'split',
      'A2',
      (placement) => [
        { ...placement, to: placement.from + 45 * MINUTE },
        { ...placement, from: placement.from + 45 * MINUTE },
      ],
    ],
    [
      'work with minutes missing',
      'minutes',
      'A1',
      (placement) => ({ ...placement, to: placement.to - MINUTE }),
    ],
    [
      'more units than are left',
      'units',
      'A3',
      (placement) => [placement, { ...shift(placement, 2000), units: 9 }],
    ],
    [
      'an activity that is not in the plan',
      'unknown-activity',
      'A5',
      (placement) => ({ ...placement, activity: 'Z' }),
    ],
    [
      'a window that is not in the plan',
      'unknown-window',
      'A5',
      (placement) => ({ ...placement, window: 'Z' }),
    ],
  ])('finds %s', (_, code, id, by) => {
    expect(change(id, by)).toContain(code);
  });

  it('finds work that eats into the margin, and work in the lead-out', () => {
    const usableEnd = 1440 + 480 - 45;
    const at =
      (end: number) =>
      (placement: Placement): Placement => ({
        ...placement,
        from: end * MINUTE - 30 * MINUTE,
        to: end * MINUTE,
      });
    expect(change('A5', at(usableEnd))).toEqual([]);
    expect(change('A5', at(usableEnd + 1))).not.toEqual([]);
    const all = new Set([...change('A5', at(usableEnd + 15)), ...change('A5', at(usableEnd + 45))]);
    expect(all).toEqual(new Set(['margin', 'lead-out']));
  });

  it('finds loud work in a curfew', () => {
    expect(
      change('A4', (placement) => ({ ...placement, from: 1470 * MINUTE, to: 1530 * MINUTE })),
    ).toContain('curfew');
  });

  it('finds a placement moved by one step wherever the moved time is no longer allowed', () => {
    // Planted in random plans: a visit on top of another use of a full resource, and a minute too much or too little.
    let planted = 0;
    for (let seed = 1; seed <= 150; seed += 1) {
      const { plan: document } = randomPlan(seed);
      const { placements } = allocate(document, { seconds: 0.2, clock });
      const random = createRandom(seed);
      if (placements.length === 0) continue;
      const at = random.below(placements.length);
      const placement = placements[at]!;
      const work = document.activities.find((each) => each.id === placement.activity)!;
      if (minutesInOneVisit(work.work) === 0) continue;
      const longer = placements.with(at, { ...placement, to: placement.to + MINUTE });
      expect(verify(document, { placements: longer }).map((fault) => fault.code)).toContain(
        'minutes',
      );
      for (const link of work.after) {
        const before = placements.filter((each) => each.activity === link.activity).at(-1);
        if (!before || link.from === 'start') continue;
        const early = placements.with(at, {
          ...placement,
          from: before.to - MINUTE,
          to: before.to - MINUTE + (placement.to - placement.from),
        });
        expect(verify(document, { placements: early }).map((fault) => fault.code)).toContain(
          'link',
        );
        planted += 1;
      }
      planted += 1;
    }
    expect(planted).toBeGreaterThan(100);
  });
});
