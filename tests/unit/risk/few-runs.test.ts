import { describe, expect, it } from 'vitest';
import { chancesOnTime, constant, simulate, threePoint } from '../../../src/risk/index.js';
import type { RiskNetwork, WhatIf } from '../../../src/risk/index.js';

// Second reckoning: LIFT and SWEEP take fixed minutes and nothing waits beside them, so that a run without them is over
// by just so much sooner. Every run's finish is there, and those in time are counted.
describe('the chance on time with less work, in a handful of runs', () => {
  const nodeAfter = (node: number) => [{ node, from: 'finish', lagMinutes: 0 } as const];
  const network: RiskNetwork = {
    nodes: [
      {
        id: 'CUT',
        duration: threePoint('triangular', { low: 30, likely: 60, high: 90 }),
        after: [],
      },
      { id: 'LIFT', duration: constant(5), after: nodeAfter(0) },
      { id: 'SWEEP', duration: constant(7), after: nodeAfter(1) },
    ],
  };
  const without = (...nodes: number[]): WhatIf => ({
    held: new Map(nodes.map((index) => [index, 0] as const)),
    leftOut: true,
  });
  const cases = [without(2), without(1, 2)];

  it('counts the first run, the last and each between', () => {
    const deadlineMinutes = 60.5;
    let mixed = 0;
    for (const runs of [1, 2, 3, 5])
      for (let seed = 1; seed <= 25; seed += 1) {
        const { finishMinutes } = simulate(network, { runs, seed });
        const inTime = [7, 12].map(
          (sooner) => finishMinutes.filter((finish) => finish - sooner <= deadlineMinutes).length,
        );
        const found = chancesOnTime(network, { runs, seed, deadlineMinutes }, cases);
        expect({
          runs,
          seed,
          inTime: found.map(({ probability }) => Math.round(probability * runs)),
        }).toEqual({ runs, seed, inTime });
        if (inTime[0]! > 0 && inTime[0]! < runs) mixed += 1;
      }
    expect(mixed).toBeGreaterThan(30);
  });
});
