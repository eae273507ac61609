import { betaNetwork } from './networks.js';
import { fillWords, randomState, simulate } from '../../src/risk/index.js';

const RUNS = 100_000;
const ACTIVITIES = 200;
const TURNS = 7;

function median(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[values.length >> 1]!;
}

let sink = 0;
function drawWords(): void {
  const state = randomState(1);
  const words = new Int32Array(64);
  for (let k = 0; k < RUNS * ACTIVITIES; k += words.length) {
    fillWords(state, words);
    sink ^= words[k & 63]!;
  }
}

/**
 * How long 100,000 runs over 200 activities take beside the floor of drawing as many random words in the same process.
 *
 * @param milliseconds A clock that only goes forward.
 * @param say Is given one line of figures for each shape of distribution.
 * @returns The medians of each shape, in milliseconds.
 */
export function measure(
  milliseconds: () => number,
  say: (line: string) => void,
): { readonly kind: string; readonly ms: number; readonly floor: number }[] {
  const timed = (work: () => unknown): number => {
    const before = milliseconds();
    work();
    return milliseconds() - before;
  };
  const found = (['triangular', 'beta-pert'] as const).map((kind) => {
    const network = betaNetwork(ACTIVITIES, kind);
    const simulateTimes: number[] = [];
    const floorTimes: number[] = [];
    // Interleaved, so that both see the same weather on a shared machine.
    for (let turn = 0; turn < TURNS; turn += 1) {
      floorTimes.push(timed(drawWords));
      simulateTimes.push(
        timed(() => simulate(network, { runs: RUNS, seed: 7, deadlineMinutes: 1500 })),
      );
    }
    const ms = median(simulateTimes);
    const floor = median(floorTimes);
    say(
      `${kind}: ${RUNS} runs x ${ACTIVITIES} activities ${ms.toFixed(0)} ms (best ${Math.min(...simulateTimes).toFixed(0)}); ` +
        `raw draws ${floor.toFixed(0)} ms; ratio ${(ms / floor).toFixed(2)}; ` +
        `${((1e6 * ms) / RUNS / ACTIVITIES).toFixed(1)} ns per activity and run`,
    );
    return { kind, ms, floor };
  });
  if (sink === 42) say('unlikely');
  return found;
}
