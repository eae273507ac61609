/**
 * How long 100,000 runs over 200 activities take, against the floor of drawing the same number of random words in the
 * same process. Run by hand: `npx esbuild bench/risk/simulate.ts --bundle --platform=node --format=esm | node --input-type=module`
 */
import { betaNetwork } from './networks.js';
import { nextWord, randomState, simulate } from '../../src/risk/index.js';

const RUNS = 100_000;
const ACTIVITIES = 200;

/** Processor milliseconds used, which a busy machine disturbs less than the clock. */
function timed(work: () => unknown): number {
  const before = process.cpuUsage();
  work();
  const used = process.cpuUsage(before);
  return (used.user + used.system) / 1000;
}

function median(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[values.length >> 1]!;
}

let sink = 0;
function drawWords(): void {
  const state = randomState(1);
  for (let k = 0; k < RUNS * ACTIVITIES; k += 1) sink ^= nextWord(state);
}

for (const kind of ['triangular', 'beta-pert'] as const) {
  const network = betaNetwork(ACTIVITIES, kind);
  const simulateTimes: number[] = [];
  const floorTimes: number[] = [];
  // Interleaved, so that both see the same weather on a shared machine.
  for (let turn = 0; turn < 5; turn += 1) {
    floorTimes.push(timed(drawWords));
    simulateTimes.push(
      timed(() => simulate(network, { runs: RUNS, seed: 7, deadlineMinutes: 1500 })),
    );
  }
  const ms = median(simulateTimes);
  const floor = median(floorTimes);
  console.log(
    `${kind}: ${RUNS} runs x ${ACTIVITIES} activities ${ms.toFixed(0)} ms (best ${Math.min(...simulateTimes).toFixed(0)}); ` +
      `raw draws ${floor.toFixed(0)} ms; ratio ${(ms / floor).toFixed(2)}; ` +
      `${((1e6 * ms) / RUNS / ACTIVITIES).toFixed(1)} ns per activity and run`,
  );
}
if (sink === 42) console.log('unlikely');
