import { sampleWidth, TICKS } from './sampling.js';

/** By position, in ticks: no run draws a length outside. */
export interface LengthBounds {
  readonly least: Int32Array;
  readonly greatest: Int32Array;
}

/** What a compiled network draws lengths from. */
interface Drawn {
  readonly base: Int32Array;
  readonly drawAt: Int32Array;
  readonly drawWeight: Float64Array;
  readonly drawTable: Float64Array;
  readonly factorTable: Float64Array | null;
  readonly eventAt: Int32Array;
  readonly eventTable: Float64Array;
  readonly copyFrom: Int32Array;
  readonly copyTo: Int32Array;
}

/** Tables rise, so their ends are the bounds. */
export function lengthBounds(network: Drawn): LengthBounds {
  const { base, drawAt, drawWeight, drawTable, factorTable, eventAt, eventTable } = network;
  const { copyFrom, copyTo } = network;
  const least = base.slice();
  const greatest = base.slice();
  const first = (table: Float64Array, k: number): number => table[k * sampleWidth]!;
  const last = (table: Float64Array, k: number): number => table[(k + 1) * sampleWidth - 1]!;
  drawAt.forEach((position, k) => {
    const scale = (factor: number): number => 1 + drawWeight[k]! * (factor - 1);
    const lowest = factorTable ? scale(inPlain(first(factorTable, 0))) : 1;
    const highest = factorTable ? scale(inPlain(last(factorTable, 0))) : 1;
    least[position] = Math.floor(first(drawTable, k) * lowest);
    greatest[position] = roundedUp(last(drawTable, k) * highest);
  });
  eventAt.forEach((position, k) => (greatest[position]! += roundedUp(last(eventTable, k))));
  copyTo.forEach((position, k) => {
    least[position] = least[copyFrom[k]!]!;
    greatest[position] = greatest[copyFrom[k]!]!;
  });
  return { least, greatest };
}

/** A factor is a plain number, though its table is in ticks as all are. */
const inPlain = (ticks: number): number => ticks / TICKS;

/** A draw is rounded to the nearest tick. */
const roundedUp = (ticks: number): number => Math.floor(ticks) + 1;
