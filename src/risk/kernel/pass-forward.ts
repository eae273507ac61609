import { later, meets } from './branchless.js';
import type { CompiledNetwork } from './compile-network.js';
import { Works } from './forward-layout.js';
import type { RunSpace } from './run-space.js';
import { LANES } from './sampling.js';

/**
 * The moments at which the links of position `i` let it start, written to `starts`, and with `lengths` the finishes too,
 * written to `times`: up to three links are taken in one go, so that a moment is stored once.
 */
function readyTimes(
  network: CompiledNetwork,
  { times, durations }: RunSpace,
  i: number,
  offset: number,
  starts: Int32Array,
): void {
  const { linkFrom, linkSlot, linkLag, size, forward } = network;
  const { slotAt, slotLag } = forward;
  const lanes = LANES;
  const at = i * lanes;
  const end = (size + i) * lanes;
  const length = offset + at;
  const release = network.release[i]!;
  const first = linkFrom[i]!;
  const last = linkFrom[i + 1]! - 1;
  if (last < first) {
    for (let lane = 0; lane < lanes; lane += 1) {
      starts[at + lane] = release;
      times[end + lane] = (release + durations[length + lane]!) | 0;
    }
    return;
  }
  // A link that is not there is stood in for by the last that is.
  const second = Math.min(first + 1, last);
  const slot = slotAt[linkSlot[first]!]! * lanes;
  const lag = linkLag[first]! + slotLag[linkSlot[first]!]!;
  const slot2 = slotAt[linkSlot[second]!]! * lanes;
  const lag2 = linkLag[second]! + slotLag[linkSlot[second]!]!;
  if (forward.works[i] === Works.finish) {
    for (let lane = 0; lane < lanes; lane += 1)
      times[end + lane] = (times[slot + lane]! + lag + durations[length + lane]!) | 0;
    return;
  }
  if (last === first) {
    for (let lane = 0; lane < lanes; lane += 1) {
      const start = later(release, (times[slot + lane]! + lag) | 0);
      starts[at + lane] = start;
      times[end + lane] = (start + durations[length + lane]!) | 0;
    }
    return;
  }
  if (last === second) {
    for (let lane = 0; lane < lanes; lane += 1) {
      const first = (times[slot + lane]! + lag) | 0;
      const other = (times[slot2 + lane]! + lag2) | 0;
      const start = later(release, later(first, other));
      starts[at + lane] = start;
      times[end + lane] = (start + durations[length + lane]!) | 0;
    }
    return;
  }
  const third = first + 2;
  const slot3 = slotAt[linkSlot[third]!]! * lanes;
  const lag3 = linkLag[third]! + slotLag[linkSlot[third]!]!;
  for (let lane = 0; lane < lanes; lane += 1) {
    const first = (times[slot + lane]! + lag) | 0;
    const other = (times[slot2 + lane]! + lag2) | 0;
    const start = later(later(release, (times[slot3 + lane]! + lag3) | 0), later(first, other));
    starts[at + lane] = start;
    times[end + lane] = (start + durations[length + lane]!) | 0;
  }
  for (let link = third + 1; link <= last; link += 1) {
    const from = slotAt[linkSlot[link]!]! * lanes;
    const wait = linkLag[link]! + slotLag[linkSlot[link]!]!;
    for (let lane = 0; lane < lanes; lane += 1) {
      const start = later(starts[at + lane]!, (times[from + lane]! + wait) | 0);
      starts[at + lane] = start;
      times[end + lane] = (start + durations[length + lane]!) | 0;
    }
  }
}

/** Starts position `i` of one run as soon as closed stretches and stoppages let it, from its ready time on. */
function placeAround(
  network: CompiledNetwork,
  space: RunSpace,
  i: number,
  lane: number,
  duration: number,
): void {
  const { times, hitDelay } = space;
  const { datedAt, datedStops, size } = network;
  const { closedFrom, closedStart, closedEnd } = network.forward;
  const first = closedFrom[i]!;
  const last = closedFrom[i + 1]!;
  let start = space.ready[i * LANES + lane]!;
  let length = duration;
  // Each turn but the last passes a closed stretch for good. What takes no time needs no open time.
  for (let moved = duration > 0; moved;) {
    moved = false;
    length = duration;
    for (let k = 0; k < datedAt.length; k += 1) {
      const delay = hitDelay[k * LANES + lane]!;
      if (delay === 0 || !datedStops[k * size + i]) continue;
      const at = datedAt[k]!;
      if (start >= at) start = Math.max(start, at + delay);
      else if (start + length > at) length += delay;
    }
    for (let k = first; k < last; k += 1) {
      if (start < closedEnd[k]! && start + length > closedStart[k]!) {
        start = closedEnd[k]!;
        moved = true;
      }
    }
  }
  times[i * LANES + lane] = start;
  times[(size + i) * LANES + lane] = start + length;
}

/**
 * The same for all runs side by side where no dated event can happen. Closed stretches come in order, so one look at
 * each is enough, and most lie before or after all of the runs.
 */
function placeBetween(network: CompiledNetwork, space: RunSpace, i: number, offset: number): void {
  const { times, ready, durations } = space;
  const { closedStart, closedEnd, closedFrom } = network.forward;
  const { size } = network;
  const lanes = LANES;
  const at = i * lanes;
  const end = (size + i) * lanes;
  const length = offset + at;
  let first = ready[at]!;
  let last = times[end]!;
  for (let lane = 0; lane < lanes; lane += 1) {
    const start = ready[at + lane]!;
    times[at + lane] = start;
    first = Math.min(first, start);
    last = Math.max(last, times[end + lane]!);
  }
  const stretches = closedFrom[i + 1]!;
  for (let k = closedFrom[i]!; k < stretches && closedStart[k]! < last; k += 1) {
    const from = closedStart[k]!;
    const to = closedEnd[k]!;
    if (to <= first) continue;
    for (let lane = 0; lane < lanes; lane += 1) {
      const start = times[at + lane]!;
      const lasts = durations[length + lane]!;
      const open = (start + ((to - start) & meets(start, lasts, from, to))) | 0;
      times[at + lane] = open;
      const over = (open + lasts) | 0;
      times[end + lane] = over;
      last = Math.max(last, over);
    }
  }
}

/** The times of position `i` in all runs side by side, from those of what it waits for. */
export function placeNode(
  network: CompiledNetwork,
  space: RunSpace,
  i: number,
  offset: number,
): void {
  const { works, closedFrom } = network.forward;
  if (works[i] === Works.none) return;
  const isStopped = network.datedAt.length > 0;
  const isClosed = closedFrom[i] !== closedFrom[i + 1];
  readyTimes(network, space, i, offset, isClosed || isStopped ? space.ready : space.times);
  if (!isStopped) {
    if (isClosed) placeBetween(network, space, i, offset);
    return;
  }
  const length = offset + i * LANES;
  for (let lane = 0; lane < LANES; lane += 1) {
    placeAround(network, space, i, lane, space.durations[length + lane]!);
  }
}

/** The finish of the last node of each run, from the times as they stand. */
function takeFinish({ size, isLast, forward }: CompiledNetwork, { times, finish }: RunSpace): void {
  finish.fill(0);
  for (let i = 0; i < size; i += 1) {
    if (!isLast[i]) continue;
    const end = forward.slotAt[size + i]! * LANES;
    const lag = forward.slotLag[size + i]!;
    for (let lane = 0; lane < LANES; lane += 1) {
      finish[lane] = later(finish[lane]!, (times[end + lane]! + lag) | 0);
    }
  }
}

/** The earliest times of each run, and the finish of its last node. */
export function passForward(network: CompiledNetwork, space: RunSpace, offset: number): void {
  for (let i = 0; i < network.size; i += 1) placeNode(network, space, i, offset);
  takeFinish(network, space);
}

/** The same again for some positions only, in rising order: those that something before them has moved. */
export function passAgain(
  network: CompiledNetwork,
  space: RunSpace,
  offset: number,
  positions: Int32Array,
): void {
  for (const i of positions) placeNode(network, space, i, offset);
  takeFinish(network, space);
}
