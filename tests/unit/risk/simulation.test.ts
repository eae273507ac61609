import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  beginSimulation,
  constant,
  helpsMost,
  nearestRank,
  outlookOf,
  simulate,
  threePoint,
  topologicalOrder,
  type RiskLink,
  type RiskNetwork,
  type RiskNode,
} from '../../../src/risk/index.js';
import { goldenRun } from '../../helpers/risk-golden.js';

const after = (...nodes: number[]): RiskLink[] =>
  nodes.map((node) => ({ node, from: 'finish', lagMinutes: 0 }));
const fixed = (id: string, minutes: number, links: readonly RiskLink[] = []): RiskNode => ({
  id,
  duration: constant(minutes),
  after: links,
});
const finishOf = (network: RiskNetwork): number =>
  simulate(network, { runs: 1, seed: 1 }).finishMinutes[0]!;

describe('one run of certain work', () => {
  it('adds up a chain with a gap', () => {
    expect(
      finishOf({
        nodes: [fixed('A', 30), fixed('B', 20, [{ node: 0, from: 'finish', lagMinutes: 15 }])],
      }),
    ).toBe(65);
  });

  it('counts a gap from a start', () => {
    expect(
      finishOf({
        nodes: [fixed('A', 90), fixed('B', 20, [{ node: 0, from: 'start', lagMinutes: 30 }])],
      }),
    ).toBe(90);
    expect(
      finishOf({
        nodes: [fixed('A', 40), fixed('B', 20, [{ node: 0, from: 'start', lagMinutes: 30 }])],
      }),
    ).toBe(50);
  });

  it('waits whole for the end of a closed stretch it would run into, and uses the time before one it does not', () => {
    const closed = [
      { from: 60, to: 90 },
      { from: 120, to: 150 },
    ];
    const at = (minutes: number): number =>
      finishOf({ nodes: [{ ...fixed('A', minutes), closed, releaseMinutes: 10 }] });
    expect(at(50)).toBe(60);
    expect(at(51)).toBe(150 + 51);
    expect(at(30)).toBe(40);
    expect(finishOf({ nodes: [{ ...fixed('A', 30), closed, releaseMinutes: 40 }] })).toBe(120);
  });

  it('is held up by a stoppage that is certain, whether running or about to start', () => {
    const stop = { atMinutes: 20, probability: 1, delay: constant(15) };
    const nodes = [fixed('A', 30), fixed('B', 10, after(0))];
    expect(finishOf({ nodes, datedEvents: [stop] })).toBe(55);
    expect(finishOf({ nodes, datedEvents: [{ ...stop, atMinutes: 30 }] })).toBe(55);
    expect(finishOf({ nodes, datedEvents: [{ ...stop, atMinutes: 40 }] })).toBe(40);
    expect(finishOf({ nodes, datedEvents: [{ ...stop, nodes: [1] }] })).toBe(45);
  });

  it('gives a twin the same minutes as its original, in every run', () => {
    const spread = threePoint('triangular', { low: 10, likely: 20, high: 60 });
    const network: RiskNetwork = {
      nodes: [
        { id: 'A', duration: spread, after: [] },
        { id: 'B', duration: constant(0), sameDurationAs: 0, after: [] },
      ],
    };
    expect([...simulate(network, { runs: 500, seed: 5 }).criticality]).toEqual([1, 1]);
  });

  it('multiplies by the common factor according to weight', () => {
    const network: RiskNetwork = {
      nodes: [fixed('A', 100), { ...fixed('B', 100, after(0)), factorWeight: 0 }],
      commonFactor: constant(1.5),
    };
    expect(finishOf(network)).toBe(250);
  });
});

describe('bad networks', () => {
  it('names those that wait for each other', () => {
    expect(() => topologicalOrder([fixed('A', 1, after(1)), fixed('B', 1, after(0))])).toThrow(
      /ring: A, B/,
    );
  });
  it('refuses points out of order, no runs, and part seeds', () => {
    expect(() => threePoint('triangular', { low: 5, likely: 4, high: 6 })).toThrow(RangeError);
    expect(() => simulate({ nodes: [fixed('A', 1)] }, { runs: 0, seed: 1 })).toThrow(RangeError);
    expect(() => simulate({ nodes: [fixed('A', 1)] }, { runs: 1, seed: 0.5 })).toThrow(RangeError);
  });
});

describe('the figures', () => {
  const ten = Float64Array.from([1, 2, 3, 4, 5, 6, 7, 8, 9, 10]);
  it('takes P-values by nearest rank', () => {
    expect([0.5, 0.8, 0.81, 0.95].map((p) => nearestRank(ten, p))).toEqual([5, 8, 9, 10]);
  });
  it('counts a finish on the minute as on time, and averages the overrun over all runs', () => {
    const outlook = outlookOf(ten, 8);
    expect(outlook.onTime.probability).toBe(0.8);
    expect(outlook.expectedOverrunMinutes).toBeCloseTo(0.3, 12);
    expect(outlook.onTime.standardError).toBeCloseTo(Math.sqrt(0.16 / 10), 12);
  });
  it('never reports no error at all', () => {
    expect(outlookOf(ten, 50).onTime.standardError).toBeGreaterThan(0);
  });
  it('gives the chance of more than 1, 2 and 3 hours late', () => {
    const outlook = outlookOf(Float64Array.from([0, 61, 121, 181]), 0);
    expect(outlook.laterThan.map((item) => [item.minutes, item.probability])).toEqual([
      [60, 0.75],
      [120, 0.5],
      [180, 0.25],
    ]);
  });
});

describe('the same seed', () => {
  it('gives the golden bits', () => {
    expect([goldenRun('triangular'), goldenRun('beta-pert')]).toEqual(['f36391f7', 'fef980bc']);
  });

  it('gives the same result whether run in one go or in steps', () => {
    const network: RiskNetwork = {
      nodes: [
        { id: 'A', duration: threePoint('beta-pert', { low: 1, likely: 2, high: 9 }), after: [] },
      ],
    };
    const whole = simulate(network, { runs: 5000, seed: 9, deadlineMinutes: 3 });
    const stepped = beginSimulation(network, { runs: 5000, seed: 9, deadlineMinutes: 3 });
    while (!stepped.done) stepped.advance(700);
    expect(stepped.result()).toEqual(whole);
  });

  it('stops when told, with the runs done so far', () => {
    const result = simulate(
      { nodes: [fixed('A', 1)] },
      { runs: 1_000_000, seed: 1, shouldStop: () => true },
    );
    expect(result.stopped).toBe(true);
    expect(result.runs).toBeLessThan(10_000);
    expect(result.finishMinutes).toHaveLength(result.runs);
  });
});

const nodes = fc.array(
  fc.record({
    low: fc.integer({ min: 0, max: 60 }),
    more: fc.integer({ min: 0, max: 60 }),
    most: fc.integer({ min: 0, max: 90 }),
    before: fc.array(fc.nat(20), { maxLength: 3 }),
    closed: fc.boolean(),
  }),
  { minLength: 1, maxLength: 12 },
);

describe('longer work', () => {
  it('never finishes a run earlier, so never raises the chance of being on time', () => {
    fc.assert(
      fc.property(nodes, fc.nat(11), fc.integer({ min: 1, max: 40 }), (rows, which, extra) => {
        const networkOf = (longer: number): RiskNetwork => ({
          nodes: rows.map((row, index) => ({
            id: `N${index}`,
            duration: threePoint('triangular', {
              low: row.low + (index === longer ? extra : 0),
              likely: row.low + row.more + (index === longer ? extra : 0),
              high: row.low + row.more + row.most + 1 + (index === longer ? extra : 0),
            }),
            after: after(...(index === 0 ? [] : row.before.map((value) => value % index))),
            ...(row.closed && { closed: [{ from: 100, to: 160 }] }),
          })),
          datedEvents: [{ atMinutes: 50, probability: 0.5, delay: constant(20) }],
        });
        const options = { runs: 200, seed: 4, deadlineMinutes: 300 };
        const base = simulate(networkOf(-1), options);
        const longer = simulate(networkOf(which % rows.length), options);
        base.finishMinutes.forEach((finish, k) =>
          expect(longer.finishMinutes[k]!).toBeGreaterThanOrEqual(finish),
        );
        expect(longer.deadline!.onTime.probability).toBeLessThanOrEqual(
          base.deadline!.onTime.probability,
        );
      }),
      { numRuns: 150 },
    );
  });
});

describe('what helps most', () => {
  it('is the wide activity on the path, not the wide one beside it', () => {
    const network: RiskNetwork = {
      nodes: [
        {
          id: 'steady',
          duration: threePoint('triangular', { low: 55, likely: 60, high: 65 }),
          after: [],
        },
        {
          id: 'wide',
          duration: threePoint('triangular', { low: 60, likely: 90, high: 200 }),
          after: after(0),
        },
        {
          id: 'beside',
          duration: threePoint('triangular', { low: 1, likely: 10, high: 90 }),
          after: [],
        },
      ],
    };
    const options = { runs: 4000, seed: 2, deadlineMinutes: 180 };
    const result = simulate(network, options);
    const [first] = helpsMost(network, options, result.criticality, [[0], [1], [2]]);
    expect(first!.group).toBe(1);
    expect(first!.probabilityGain).toBeCloseTo(1 - result.deadline!.onTime.probability, 10);
    expect(result.criticality[2]!).toBe(0);
  });
});
