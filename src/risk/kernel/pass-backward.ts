import { meets, sooner } from './branchless.js';
import type { CompiledNetwork } from './compile-network.js';
import type { RunSpace } from './run-space.js';
import { LANES } from './sampling.js';

/**
 * By position, a value in ticks for each run that is done side by side. What no start is asked by has the last of all
 * limits of a finish.
 */
export interface Limits {
  readonly start: Int32Array;
  readonly startBy: Int32Array;
  readonly finishBy: Int32Array;
}

export const limitsOf = (size: number): Limits => ({
  start: new Int32Array(size * LANES),
  startBy: new Int32Array(size * LANES),
  finishBy: new Int32Array(size * LANES),
});

/**
 * The latest start of each position in each run, so that it and all that waits for it keep to the limits, which become
 * those of the start and finish of each. The last position first.
 */
export function passBackward(
  network: CompiledNetwork,
  space: RunSpace,
  offset: number,
  limits: Limits,
): void {
  const { size, linkFrom, linkSlot, linkLag, closedFrom, datedAt } = network;
  const { start, startBy, finishBy } = limits;
  const lanes = LANES;
  for (let i = size - 1; i >= 0; i -= 1) {
    const at = i * lanes;
    if (datedAt.length > 0) startsAround(network, space, i, offset, limits);
    else {
      startsBefore(space.durations, i, offset, limits);
      if (closedFrom[i] !== closedFrom[i + 1]) startsBetween(network, space, i, offset, start);
    }
    for (let link = linkFrom[i]!; link < linkFrom[i + 1]!; link += 1) {
      const slot = linkSlot[link]!;
      const lag = linkLag[link]!;
      const by = slot < size ? startBy : finishBy;
      const to = (slot < size ? slot : slot - size) * lanes;
      for (let lane = 0; lane < lanes; lane += 1)
        by[to + lane] = sooner(by[to + lane]!, (start[at + lane]! - lag) | 0);
    }
  }
}

/** Latest starts of a position that nothing interrupts. */
function startsBefore(
  durations: Int32Array,
  i: number,
  offset: number,
  { start, startBy, finishBy }: Limits,
): void {
  const at = i * LANES;
  const length = offset + at;
  for (let lane = 0; lane < LANES; lane += 1)
    start[at + lane] = sooner(
      startBy[at + lane]!,
      (finishBy[at + lane]! - durations[length + lane]!) | 0,
    );
}

/**
 * Moves the latest starts of a position to before closed stretches, where no dated event can happen. These come in order,
 * so one look at each is enough, the last first, and most lie before or after all of the runs.
 */
function startsBetween(
  { closedFrom, closedStart, closedEnd }: CompiledNetwork,
  { durations }: RunSpace,
  i: number,
  offset: number,
  start: Int32Array,
): void {
  const lanes = LANES;
  const at = i * lanes;
  const length = offset + at;
  let first = start[at]!;
  let last = first;
  let longest = 0;
  for (let lane = 0; lane < lanes; lane += 1) {
    const begins = start[at + lane]!;
    const lasts = durations[length + lane]!;
    if (begins < first) first = begins;
    if (begins + lasts > last) last = begins + lasts;
    if (lasts > longest) longest = lasts;
  }
  for (let k = closedFrom[i + 1]! - 1; k >= closedFrom[i]! && closedEnd[k]! > first; k -= 1) {
    const from = closedStart[k]!;
    const to = closedEnd[k]!;
    if (from >= last) continue;
    for (let lane = 0; lane < lanes; lane += 1) {
      const begins = start[at + lane]!;
      const lasts = durations[length + lane]!;
      const early = (from - lasts - begins) & meets(begins, lasts, from, to);
      start[at + lane] = (begins + early) | 0;
    }
    first = Math.min(first, from - longest);
  }
}

/** Latest starts of a position that stoppages may interrupt. */
function startsAround(
  network: CompiledNetwork,
  space: RunSpace,
  i: number,
  offset: number,
  { start, startBy, finishBy }: Limits,
): void {
  for (let lane = 0; lane < LANES; lane += 1) {
    const at = i * LANES + lane;
    const minutes = space.durations[offset + at]!;
    let latest = latestTicks(network, space, i, lane, finishBy[at]!, minutes);
    if (startBy[at]! < latest)
      latest = latestTicks(network, space, i, lane, startBy[at]! + minutes, minutes);
    start[at] = latest;
  }
}

/** The last moment from which position `i` can run its length and be over by `by`, past stoppages and closed stretches. */
function latestTicks(
  { closedFrom, closedStart, closedEnd, datedAt, datedStops, size }: CompiledNetwork,
  { hitDelay }: RunSpace,
  i: number,
  lane: number,
  by: number,
  minutes: number,
): number {
  if (minutes === 0) return by;
  let end = by;
  for (;;) {
    // Stoppages lengthen work under way; none starts or ends inside one.
    let length = minutes;
    for (let k = datedAt.length - 1; k >= 0; k -= 1) {
      const delay = hitDelay[k * LANES + lane]!;
      const at = datedAt[k]!;
      if (delay === 0 || !datedStops[k * size + i] || end <= at || end - length >= at + delay)
        continue;
      if (end < at + delay) end = at;
      else length += delay;
    }
    const start = end - length;
    let moved = false;
    for (let k = closedFrom[i + 1]! - 1; k >= closedFrom[i]! && !moved; k -= 1) {
      if (start >= closedEnd[k]! || end <= closedStart[k]!) continue;
      end = closedStart[k]!;
      moved = true;
    }
    if (!moved) return start;
  }
}
