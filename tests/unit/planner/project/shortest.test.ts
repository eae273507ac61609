import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { project, type ProjectProblem } from '../../../../src/planner/project/index.js';
import type { Budget } from '../../../../src/planner/project/budget.js';
import { Learner } from '../../../../src/planner/project/learn.js';
import { createNetwork } from '../../../../src/planner/project/network.js';
import { projectFault, shortestMakespan, type SmallProject } from './check.js';

const small = fc.integer({ min: 1, max: 6 }).chain((n) => {
  const perActivity = (most: number) => fc.array(fc.nat(most), { minLength: n, maxLength: n });
  return fc
    .record({
      durations: perActivity(5),
      demands: fc.array(perActivity(4), { minLength: 1, maxLength: 2 }),
      extra: fc.nat(3),
      releases: perActivity(3),
      tails: perActivity(3),
      shuffle: fc.shuffledSubarray([...new Array(n).keys()], { minLength: n, maxLength: n }),
      arcs: fc.array(fc.tuple(fc.nat(n - 1), fc.nat(n - 1), fc.nat(2)), { maxLength: n }),
    })
    .map(({ shuffle, arcs, extra, ...rest }): SmallProject => ({
      ...rest,
      capacities: rest.demands.map((list) => Math.max(...list) + extra),
      precedence: arcs
        .filter(([a, b]) => a !== b)
        .map(([a, b, lag]) => [shuffle[Math.min(a, b)]!, shuffle[Math.max(a, b)]!, lag]),
    }));
});

/** So many steps of work. */
function budgetOf(most: number): Budget {
  let spent = 0;
  return { spend: (steps) => (spent += steps), expired: () => spent >= most };
}

function solve(p: SmallProject, most = 1e6, more: Partial<ProjectProblem> = {}) {
  return project({
    durations: Int32Array.from(p.durations),
    demands: p.demands.map((list) => Int32Array.from(list)),
    capacities: p.capacities,
    precedence: p.precedence,
    releases: Int32Array.from(p.releases),
    tails: Int32Array.from(p.tails),
    budget: budgetOf(most),
    ...more,
  });
}

/** A larger problem from a plain linear congruence, so that it is the same everywhere. */
function larger(n: number, seed: number): SmallProject {
  let state = seed;
  const draw = (bound: number): number => {
    state = (state * 1103515245 + 12345) % 2147483648;
    return Math.floor((state / 2147483648) * bound);
  };
  const list = (from: number, most: number) => Array.from({ length: n }, () => from + draw(most));
  const precedence: [number, number, number][] = [];
  for (let b = 3; b < n; b++) precedence.push([draw(b), b, 0]);
  return {
    durations: list(1, 10),
    demands: [list(0, 6), list(0, 6)],
    capacities: [8, 8],
    precedence,
    releases: new Array<number>(n).fill(0),
    tails: new Array<number>(n).fill(0),
  };
}

describe('shortest schedule under shared resources', () => {
  it('never claims more than it knows when cut short at any moment', () => {
    fc.assert(
      fc.property(small, fc.integer({ min: 0, max: 5000 }), (p, most) => {
        const answer = solve(p, most);
        const shortest = shortestMakespan(p);
        expect(projectFault(p, answer.starts, answer.makespan)).toBe(undefined);
        expect(answer.lowerBound).toBeLessThanOrEqual(shortest);
        if (answer.proven) expect(answer.makespan).toBe(shortest);
      }),
      { numRuns: 300 },
    );
  });

  it('proves the shortest makespan by search alone, from a schedule far too long', () => {
    fc.assert(
      fc.property(small, (p) => {
        const network = createNetwork({
          durations: Int32Array.from(p.durations),
          demands: p.demands.map((list) => Int32Array.from(list)),
          capacities: p.capacities,
          precedence: p.precedence,
          releases: Int32Array.from(p.releases),
          tails: Int32Array.from(p.tails),
        });
        const learner = new Learner(network, 0, 100, new Int32Array(p.durations.length));
        const budget = budgetOf(Infinity);
        while (learner.run(1, budget) !== 'proven');
        const shortest = shortestMakespan(p);
        expect(learner.upper).toBe(shortest);
        expect(learner.lower).toBe(shortest);
        expect(projectFault(p, learner.starts, learner.upper)).toBe(undefined);
      }),
      { numRuns: 300 },
    );
  });

  it('finds and proves the shortest makespan of every small problem', () => {
    fc.assert(
      fc.property(small, (p) => {
        const answer = solve(p);
        expect(projectFault(p, answer.starts, answer.makespan)).toBe(undefined);
        expect(answer.makespan).toBe(shortestMakespan(p));
        expect(answer.proven).toBe(true);
        expect(answer.lowerBound).toBe(answer.makespan);
      }),
      { numRuns: 200 },
    );
  });

  it('answers at once, whatever the budget', () => {
    const p = larger(300, 9);
    const answer = solve(p, 0);
    expect(projectFault(p, answer.starts, answer.makespan)).toBe(undefined);
  });

  it('gives the same answer twice for one seed', () => {
    const p = larger(40, 4);
    const [a, b] = [0, 1].map(() => solve(p, 30_000, { seed: 12 }));
    expect(a).toEqual(b);
  });

  it('schedules nothing in no time', () => {
    const none = { durations: [], demands: [[]], capacities: [1], precedence: [] };
    expect(solve({ ...none, releases: [], tails: [] })).toMatchObject({
      makespan: 0,
      lowerBound: 0,
      proven: true,
    });
  });

  it('refuses a demand above its capacity, a loop, a negative number and lists of unlike length', () => {
    const p = larger(6, 1);
    expect(() => solve({ ...p, capacities: [0, 8] })).toThrow(RangeError);
    expect(() => solve({ ...p, precedence: [...p.precedence, [5, 5, 0]] })).toThrow(RangeError);
    expect(() => solve({ ...p, durations: [-1, 1, 1, 1, 1, 1] })).toThrow(RangeError);
    expect(() => solve({ ...p, releases: [0] })).toThrow(RangeError);
  });
});
