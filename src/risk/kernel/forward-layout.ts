import type { LengthBounds } from './length-bounds.js';

/** What is worked out of a position in each run. */
export const Works = {
  /** Nothing: its times are another's, so many ticks later. */
  none: 0,
  /** Its start is another's time, so many ticks later. */
  finish: 1,
  all: 2,
} as const;

/** What the forward pass has to work out; all else follows from that in every run. */
export interface ForwardLayout {
  /** One of `Works` for each position. */
  readonly works: Uint8Array;
  /** By slot: the slot where its times stand, and how many ticks after those it is. */
  readonly slotAt: Int32Array;
  readonly slotLag: Int32Array;
  /** 1 where the date of a position may be later than all that it waits for. */
  readonly mayBind: Uint8Array;
  /** The closed stretches of each position that a run may meet. */
  readonly closedFrom: Int32Array;
  readonly closedStart: Int32Array;
  readonly closedEnd: Int32Array;
  /** Whether there are any, or any dated event may happen. */
  readonly interrupted: boolean;
}

/** The network that is laid out, in positions, slots and ticks. */
interface Compiled extends LengthBounds {
  readonly size: number;
  readonly release: Int32Array;
  readonly linkFrom: Int32Array;
  readonly linkSlot: Int32Array;
  readonly linkLag: Int32Array;
  readonly closedFrom: Int32Array;
  readonly closedStart: Int32Array;
  readonly closedEnd: Int32Array;
  readonly datedAt: Int32Array;
}

/**
 * Leaves out what no run can come to, by the least and greatest lengths.
 *
 * @param held Positions that changes hold, and the most ticks that they hold each at. They, and what waits for them, are
 *   worked out in full, since a change may let links go past them.
 */
export function forwardLayout(network: Compiled, held: ReadonlyMap<number, number>): ForwardLayout {
  const { size, release, linkFrom, linkSlot, linkLag, datedAt } = network;
  const isStopped = datedAt.length > 0;
  const works = new Uint8Array(size).fill(Works.all);
  const slotAt = Int32Array.from({ length: 2 * size }, (_, slot) => slot);
  const slotLag = new Int32Array(2 * size);
  const mayBind = new Uint8Array(size).fill(1);
  const closedFrom = new Int32Array(size + 1);
  const starts: number[] = [];
  const ends: number[] = [];
  // By slot, with everything that may be changed.
  const earliest = new Float64Array(2 * size);
  const latest = new Float64Array(2 * size);
  for (let i = 0; i < size; i += 1) {
    const most = held.get(i);
    const isHeld = most !== undefined;
    // What is left out has neither gaps nor a date.
    const less = (ticks: number): number => (isHeld ? Math.min(ticks, 0) : ticks);
    const more = (ticks: number): number => (isHeld ? Math.max(ticks, 0) : ticks);
    const least = isHeld ? 0 : network.least[i]!;
    const greatest = Math.max(network.greatest[i]!, most ?? 0);
    let arrives = -Infinity;
    let last = more(release[i]!);
    for (let link = linkFrom[i]!; link < linkFrom[i + 1]!; link += 1) {
      const slot = linkSlot[link]!;
      arrives = Math.max(arrives, earliest[slot]! + less(linkLag[link]!));
      last = Math.max(last, latest[slot]! + more(linkLag[link]!));
    }
    const first = Math.max(less(release[i]!), arrives);
    if (!isHeld && release[i]! <= arrives) mayBind[i] = 0;
    for (let k = network.closedFrom[i]!; k < network.closedFrom[i + 1]!; k += 1) {
      const from = network.closedStart[k]!;
      const to = network.closedEnd[k]!;
      if (!isStopped && (to <= first || from >= last + greatest || greatest === 0)) continue;
      starts.push(from);
      ends.push(to);
      last = Math.max(last, to);
    }
    closedFrom[i + 1] = starts.length;
    earliest[i] = first;
    latest[i] = last;
    earliest[size + i] = first + least;
    latest[size + i] = last + greatest;

    const link = linkFrom[i]!;
    const slot = linkSlot[link]!;
    const leans =
      linkFrom[i + 1]! - link === 1 &&
      !isStopped &&
      !isHeld &&
      !held.has(slot % size) &&
      mayBind[i] === 0 &&
      closedFrom[i] === closedFrom[i + 1];
    if (!leans) continue;
    works[i] = least === greatest ? Works.none : Works.finish;
    slotAt[i] = slotAt[slot]!;
    slotLag[i] = slotLag[slot]! + linkLag[link]!;
    if (least !== greatest) continue;
    slotAt[size + i] = slotAt[i]!;
    slotLag[size + i] = slotLag[i]! + least;
  }
  return {
    works,
    slotAt,
    slotLag,
    mayBind,
    closedFrom,
    closedStart: Int32Array.from(starts),
    closedEnd: Int32Array.from(ends),
    interrupted: starts.length > 0 || isStopped,
  };
}
