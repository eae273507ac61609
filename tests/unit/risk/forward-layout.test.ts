import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { constant, forwardPass, randomState, type RiskNetwork } from '../../../src/risk/index.js';
import { compileNetwork } from '../../../src/risk/kernel/compile-network.js';
import { heldCase } from '../../../src/risk/kernel/held-case.js';
import { passForward } from '../../../src/risk/kernel/pass-forward.js';
import { eachBatch, runSpace } from '../../../src/risk/kernel/run-block.js';
import { LANES, TICKS } from '../../../src/risk/kernel/sampling.js';
import { randomNetwork } from '../../helpers/random-network.js';

describe('what the forward pass leaves out', () => {
  it('follows from the rest: times are those of each run by itself', () => {
    fc.assert(
      fc.property(randomNetwork, fc.nat({ max: 11 }), (network, changed) => {
        const held = new Map([[changed % network.nodes.length, 25]]);
        for (const changes of [[], [{ held }]]) {
          const compiled = compileNetwork(network, changes);
          const { size, forward } = compiled;
          const space = runSpace(compiled, randomState(1), 1);
          // Compared at once: a look at each of a million times costs more than to find them.
          const found: number[] = [];
          const expected: number[] = [];
          eachBatch(compiled, space, 70, (offset, lanesUsed) => {
            passForward(compiled, space, offset);
            for (let lane = 0; lane < lanesUsed; lane += 1) {
              const minutes = new Float64Array(size);
              compiled.nodeAt.forEach((index, position) => {
                minutes[index] = space.durations[offset + position * LANES + lane]! / TICKS;
              });
              const alone = forwardPass(network.nodes, (index) => minutes[index]!);
              const timeOf = (slot: number): number =>
                (space.times[forward.slotAt[slot]! * LANES + lane]! + forward.slotLag[slot]!) /
                TICKS;
              compiled.nodeAt.forEach((index, i) => {
                found.push(timeOf(i), timeOf(size + i));
                expected.push(alone[index]!.start, alone[index]!.finish);
              });
              found.push(space.finish[lane]! / TICKS);
              expected.push(Math.max(...alone.map((times) => times.finish)));
            }
          });
          expect(found.length).toBe(70 * (2 * network.nodes.length + 1));
          expect(found).toEqual(expected);
        }
      }),
      { numRuns: 300 },
    );
  });

  const chain: RiskNetwork = {
    nodes: [
      { id: 'CUT', duration: constant(60), after: [] },
      { id: 'LIFT', duration: constant(30), after: [{ node: 0, from: 'finish', lagMinutes: 0 }] },
    ],
  };

  it('tries no change that the network was not compiled for', () => {
    const change = { held: new Map([[1, 10]]) };
    expect(() => heldCase(compileNetwork(chain), change)).toThrow(RangeError);
    expect(() => heldCase(compileNetwork(chain, [change]), { held: new Map([[1, 11]]) })).toThrow(
      RangeError,
    );
    expect(heldCase(compileNetwork(chain, [change]), change).ticks).toEqual(
      new Map([[1, 10 * TICKS]]),
    );
  });
});
