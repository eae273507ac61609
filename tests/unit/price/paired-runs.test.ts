import { describe, expect, it } from 'vitest';
import { constant, pairedFinishes, simulate, type RiskNetwork } from '../../../src/risk/index.js';

const spread = (low: number, high: number) =>
  ({ kind: 'triangular', low, likely: (low + high) / 2, high }) as const;
const follows = (node: number) => [{ node, from: 'finish', lagMinutes: 0 } as const];

const chain = (names: readonly string[]): { network: RiskNetwork; names: readonly string[] } => ({
  names,
  network: {
    nodes: names.map((id, k) => ({
      id,
      duration: spread(20, 60),
      after: k === 0 ? [] : follows(k - 1),
    })),
  },
});

describe('runs paired over different networks', () => {
  const options = { seed: 7, runs: 3000 };
  const full = chain(['a', 'b', 'c']);

  it('gives a piece of work the same length in run i wherever it stands', () => {
    const found = pairedFinishes([full, chain(['c', 'a']), chain(['b'])], options)!;
    found[0]!.forEach((all, run) => expect(found[1]![run]! + found[2]![run]!).toBe(all));
  });

  it('finishes alike whatever it is held against', () => {
    const [alone] = pairedFinishes([full], options)!;
    const [beside] = pairedFinishes([full, chain(['x', 'c', 'y'])], options)!;
    expect(beside).toEqual(alone);
  });

  it('agrees with the plain simulation within three standard errors of the mean', () => {
    const plain = simulate(full.network, { seed: 1, runs: 20_000 });
    const [paired] = pairedFinishes([full], { seed: 2, runs: 20_000 })!;
    const mean = paired!.reduce((sum, value) => sum + value, 0) / paired!.length;
    expect(Math.abs(mean - plain.meanMinutes)).toBeLessThan(
      3 * plain.meanStandardError * Math.SQRT2,
    );
  });

  it('keeps fixed lengths to the tick and events to their share', () => {
    const network: RiskNetwork = {
      nodes: [
        { id: 'a', duration: constant(30), after: [] },
        {
          id: 'b',
          duration: constant(10),
          after: follows(0),
          events: [{ probability: 0.25, delay: constant(60) }],
        },
      ],
    };
    const [found] = pairedFinishes([{ network, names: ['a', 'b'] }], { seed: 3, runs: 8000 })!;
    const late = found!.filter((value) => value === 100).length;
    expect(found!.filter((value) => value === 40).length + late).toBe(8000);
    expect(Math.abs(late / 8000 - 0.25)).toBeLessThan(3 * Math.sqrt((0.25 * 0.75) / 8000));
  });

  it('ends without an answer when stopped', () => {
    expect(pairedFinishes([full], { ...options, shouldStop: () => true })).toBeNull();
  });
});
