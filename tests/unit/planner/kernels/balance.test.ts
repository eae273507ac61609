import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { balance, type BalanceProblem } from '../../../../src/planner/kernels/index.js';
import { createLine } from '../../../../src/planner/kernels/balance/line.js';
import { createSearch } from '../../../../src/planner/kernels/balance/search.js';
import { createBudget } from '../../../../src/planner/kernels/budget.js';
import { balanceFault, fewestBins } from './check.js';

type Pair = readonly [number, number];

const small = fc.integer({ min: 1, max: 7 }).chain((n) =>
  fc.record({
    capacity: fc.integer({ min: 6, max: 14 }),
    times: fc.array(fc.integer({ min: 0, max: 6 }), { minLength: n, maxLength: n }),
    shuffle: fc.shuffledSubarray([...new Array(n).keys()], { minLength: n, maxLength: n }),
    arcs: fc.array(fc.tuple(fc.nat(n - 1), fc.nat(n - 1)), { maxLength: 2 * n }),
  }),
);

/** Arcs that run along a random order, so that they close no loop whatever the task numbers. */
function precedenceOf(shuffle: readonly number[], arcs: readonly Pair[]): Pair[] {
  return arcs
    .filter(([a, b]) => a !== b)
    .map(([a, b]): Pair => [shuffle[Math.min(a, b)]!, shuffle[Math.max(a, b)]!]);
}

function tickingClock(): () => number {
  let ticks = 0;
  return () => ticks++;
}

function solve(
  times: readonly number[],
  capacity: number,
  precedence: readonly Pair[],
  more: Partial<BalanceProblem> = {},
) {
  const clock = tickingClock();
  return balance({
    times: Int32Array.from(times),
    capacity,
    precedence,
    clock,
    deadlineMs: 1e9,
    ...more,
  });
}

/** A larger problem from a plain linear congruence, so that it is the same everywhere. */
function larger(n: number, capacity: number, most: number, seed: number) {
  let state = seed;
  const draw = (bound: number): number => {
    state = (state * 1103515245 + 12345) % 2147483648;
    return Math.floor((state / 2147483648) * bound);
  };
  const times = Array.from({ length: n }, () => 1 + draw(most));
  const precedence: Pair[] = [];
  for (let b = 1; b < n; b++) {
    precedence.push([Math.max(0, b - 1 - draw(8)), b]);
    if (draw(3) === 0) precedence.push([draw(b), b]);
  }
  return { times, capacity, precedence };
}

describe('fewest equal bins with precedence', () => {
  it('finds and proves the fewest bins of every small problem', () => {
    fc.assert(
      fc.property(small, ({ capacity, times, shuffle, arcs }) => {
        const precedence = precedenceOf(shuffle, arcs);
        const answer = solve(times, capacity, precedence);
        expect(balanceFault(times, capacity, precedence, answer.bins, answer.count)).toBe(
          undefined,
        );
        const fewest = fewestBins(times, capacity, precedence);
        expect(answer.count).toBe(fewest);
        expect(answer.proven).toBe(true);
        expect(answer.lowerBound).toBe(fewest);
      }),
      { numRuns: 400 },
    );
  });

  it('proves the fewest bins by search alone, in turns, both ways round', () => {
    fc.assert(
      fc.property(small, fc.boolean(), ({ capacity, times, shuffle, arcs }, turned) => {
        const given = precedenceOf(shuffle, arcs);
        const precedence = turned ? given.map(([a, b]): Pair => [b, a]) : given;
        const line = createLine(Int32Array.from(times), capacity, precedence);
        const search = createSearch(line, 1e6);
        const budget = createBudget({ clock: () => 0, deadlineMs: 1 });
        let upper = times.length + 1;
        for (;;) {
          const outcome = search.run(upper, 2, budget);
          if (outcome.bins !== undefined) {
            const count = Math.max(...outcome.bins) + 1;
            expect(count).toBeLessThan(upper);
            expect(balanceFault(times, capacity, precedence, outcome.bins, count)).toBe(undefined);
            upper = count;
          }
          if (outcome.state === 'exhausted') break;
          expect(outcome.state).not.toBe('full');
        }
        expect(upper).toBe(fewestBins(times, capacity, given));
      }),
      { numRuns: 400 },
    );
  });

  it('never claims more than it knows when cut short at any moment', () => {
    fc.assert(
      fc.property(small, fc.integer({ min: 0, max: 40 }), (p, deadlineMs) => {
        const precedence = precedenceOf(p.shuffle, p.arcs);
        const answer = solve(p.times, p.capacity, precedence, { deadlineMs });
        const fewest = fewestBins(p.times, p.capacity, precedence);
        expect(balanceFault(p.times, p.capacity, precedence, answer.bins, answer.count)).toBe(
          undefined,
        );
        expect(answer.lowerBound).toBeLessThanOrEqual(fewest);
        if (answer.proven) expect(answer.count).toBe(fewest);
      }),
      { numRuns: 300 },
    );
  });

  it('answers at once, whatever the deadline', () => {
    const { times, capacity, precedence } = larger(800, 100, 60, 5);
    const answer = solve(times, capacity, precedence, { deadlineMs: 0 });
    expect(balanceFault(times, capacity, precedence, answer.bins, answer.count)).toBe(undefined);
    expect(answer.lowerBound).toBeLessThanOrEqual(answer.count);
  });

  it('stops when told to', () => {
    const { times, capacity, precedence } = larger(120, 100, 60, 11);
    let asked = 0;
    const shouldStop = (): boolean => ++asked > 3;
    const answer = solve(times, capacity, precedence, { shouldStop });
    expect(balanceFault(times, capacity, precedence, answer.bins, answer.count)).toBe(undefined);
    expect(asked).toBeLessThan(10);
  });

  it('gives the same answer twice', () => {
    const { times, capacity, precedence } = larger(60, 50, 40, 3);
    const [a, b] = [0, 1].map(() => solve(times, capacity, precedence, { deadlineMs: 3000 }));
    expect(a).toEqual(b);
  });

  it('goes on without proving when the memory is full', () => {
    for (let seed = 1; seed < 20; seed++) {
      const { times, capacity, precedence } = larger(60, 50, 40, seed);
      const answer = solve(times, capacity, precedence, { memoryBytes: 0, deadlineMs: 1e5 });
      const whole = solve(times, capacity, precedence, { deadlineMs: 1e5 });
      expect(answer.count).toBeGreaterThanOrEqual(whole.lowerBound);
      if (answer.proven && whole.proven) expect(answer.count).toBe(whole.count);
    }
  });

  it('tells each better answer as it comes, the last being the one handed back', () => {
    const { times, capacity, precedence } = larger(80, 97, 60, 7);
    const counts: number[] = [];
    const answer = solve(times, capacity, precedence, {
      deadlineMs: 2000,
      onProgress: ({ count }) => counts.push(count),
    });
    expect(counts.at(-1)).toBe(answer.count);
    expect(counts).toEqual([...counts].sort((a, b) => b - a));
  });

  it('needs no bin for no task', () => {
    expect(solve([], 10, [])).toMatchObject({ count: 0, lowerBound: 0, proven: true });
  });

  it('takes tasks of no time, even where bins hold nothing', () => {
    expect(solve([0, 0, 0], 0, [[0, 1]])).toMatchObject({ count: 1, proven: true });
  });

  it('refuses a task that no bin can hold and a precedence that closes a loop', () => {
    expect(() => solve([5, 11], 10, [])).toThrow(RangeError);
    const loop: Pair[] = [
      [0, 1],
      [1, 0],
    ];
    expect(() => solve([5, 5], 10, loop)).toThrow(RangeError);
    expect(() => solve([5, 5], 10, [[0, 2]])).toThrow(RangeError);
  });
});
