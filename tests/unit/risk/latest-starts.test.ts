import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { backwardPass, randomState } from '../../../src/risk/index.js';
import { compileNetwork } from '../../../src/risk/kernel/compile-network.js';
import { LatestStarts } from '../../../src/risk/kernel/latest-starts.js';
import { eachBatch, runSpace } from '../../../src/risk/kernel/run-block.js';
import { LANES, TICKS } from '../../../src/risk/kernel/sampling.js';
import { randomNetwork } from '../../helpers/random-network.js';

describe('latest starts of many runs', () => {
  it('are those of a pass backwards through each run by itself', () => {
    fc.assert(
      fc.property(
        randomNetwork,
        fc.integer({ min: 60, max: 400 }),
        fc.constantFrom(0, 7),
        (network, by, kept) => {
          const after = (index: number): number => (index % 3 === 0 ? kept : 0);
          const compiled = compileNetwork(network);
          const finishBy = compiled.nodeAt.map((index) => (by - after(index)) * TICKS);
          const latest = new LatestStarts(compiled, { startBy: by * TICKS, finishBy });
          const space = runSpace(compiled, randomState(1), 1);
          // Compared at once: a look at each time costs more than to find them.
          const found: number[] = [];
          const expected: number[] = [];
          eachBatch(compiled, space, 70, (offset, lanesUsed) => {
            latest.pass(space, offset);
            for (let lane = 0; lane < lanesUsed; lane += 1) {
              const minutes = new Float64Array(compiled.size);
              compiled.nodeAt.forEach((index, position) => {
                minutes[index] = space.durations[offset + position * LANES + lane]! / TICKS;
              });
              const alone = backwardPass(network.nodes, (index) => minutes[index]!, by, after);
              compiled.nodeAt.forEach((index, i) => {
                const { position, before } = latest.of(i);
                found.push((latest.starts[position * LANES + lane]! - before) / TICKS);
                expected.push(alone[index]!.start);
              });
            }
          });
          expect(found.length).toBe(70 * network.nodes.length);
          expect(found).toEqual(expected);
        },
      ),
      { numRuns: 300 },
    );
  });
});
