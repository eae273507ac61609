import type { CompiledNetwork } from './compile-network.js';

/** The positions given and all that wait for them, in rising order. */
export function movedBy(network: CompiledNetwork, changed: ReadonlySet<number>): Int32Array {
  const { size, linkFrom, linkSlot } = network;
  const moved = new Uint8Array(size);
  const positions: number[] = [];
  for (let i = 0; i < size; i += 1) {
    let moves = changed.has(i);
    for (let link = linkFrom[i]!; link < linkFrom[i + 1]! && !moves; link += 1) {
      moves = moved[linkSlot[link]! % size] === 1;
    }
    if (!moves) continue;
    moved[i] = 1;
    positions.push(i);
  }
  return Int32Array.from(positions);
}
