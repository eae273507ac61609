// What-ifs that change one piece of work again and again: all that comes after it is gone through once for all of them.
// Where nothing after it is interrupted, a run's finish is the later of two: what it is without the work, and the work's
// own end plus the longest way from there.
import type { CompiledNetwork } from './compile-network.js';
import type { RunSpace } from './run-space.js';
import { LANES } from './sampling.js';

/** What a case holds: positions and ticks, and whether those are not done at all. */
export interface HeldCase {
  readonly ticks: ReadonlyMap<number, number>;
  readonly leftOut: boolean;
}

/** Cases, by their place in the list, that hold nodes of one set. */
export interface Family {
  readonly cases: readonly number[];
  /** Positions of the set in rising order, and 1 for each of them by position. */
  readonly own: Int32Array;
  readonly isOwn: Uint8Array;
  /** Positions that wait for them, in rising order. */
  readonly after: Int32Array;
  readonly isAfter: Uint8Array;
  /** Links from the set to those. */
  readonly out: readonly { readonly slot: number; readonly lag: number; readonly to: number }[];
}

/** Fewer cases than this are as quick one by one. */
const FEWEST = 3;

/** The families among neighbours in a list of cases; what is in none has to be gone through by itself. */
export function familiesOf(network: CompiledNetwork, cases: readonly HeldCase[]): Family[] {
  const found: Family[] = [];
  for (let from = 0; from < cases.length;) {
    let widest = cases[from]!.ticks;
    let to = from + 1;
    for (; to < cases.length; to += 1) {
      const { ticks } = cases[to]!;
      if (isWithin(ticks, widest)) continue;
      if (!isWithin(widest, ticks)) break;
      widest = ticks;
    }
    const places = Array.from({ length: to - from }, (_, k) => from + k);
    const family = to - from < FEWEST ? undefined : familyOf(network, places, [...widest.keys()]);
    if (family) found.push(family);
    from = to;
  }
  return found;
}

const isWithin = (some: ReadonlyMap<number, number>, all: ReadonlyMap<number, number>): boolean =>
  some.size <= all.size && [...some.keys()].every((one) => all.has(one));

/** Undefined where a way leads from the set out and back in, or closed time or a stoppage may lie on the way. */
function familyOf(
  network: CompiledNetwork,
  cases: readonly number[],
  positions: readonly number[],
): Family | undefined {
  const { size, linkFrom, linkSlot, linkLag, closedFrom, datedAt } = network;
  if (positions.length === 0 || datedAt.length > 0) return undefined;
  const own = Int32Array.from(positions).sort();
  const isOwn = new Uint8Array(size);
  for (const position of own) isOwn[position] = 1;
  const isAfter = new Uint8Array(size);
  const after: number[] = [];
  const out: { slot: number; lag: number; to: number }[] = [];
  for (let i = own[0]!; i < size; i += 1) {
    for (let link = linkFrom[i]!; link < linkFrom[i + 1]!; link += 1) {
      const slot = linkSlot[link]!;
      const before = slot % size;
      if (isOwn[i] === 1) {
        if (isAfter[before] === 1) return undefined;
        continue;
      }
      if (isOwn[before] === 1) out.push({ slot, lag: linkLag[link]!, to: i });
      if (isOwn[before] === 1 || isAfter[before] === 1) isAfter[i] = 1;
    }
    if (isAfter[i] === 1) after.push(i);
    if ((isOwn[i] === 1 || isAfter[i] === 1) && closedFrom[i] !== closedFrom[i + 1])
      return undefined;
  }
  return { cases, own, isOwn, after: Int32Array.from(after), isAfter, out };
}

/** Shorter than any way: there is none. */
const NO_WAY = -1_000_000_000;

/** The longest way from the start of each position to the finish of the last, for all runs side by side. */
function waysOn(
  network: CompiledNetwork,
  { durations }: RunSpace,
  offset: number,
  ways: Ways,
): void {
  const { size, linkFrom, linkSlot, linkLag, isLast } = network;
  const { fromStart, fromFinish } = ways;
  fromStart.fill(NO_WAY);
  for (let i = 0; i < size; i += 1)
    fromFinish.fill(isLast[i] === 1 ? 0 : NO_WAY, i * LANES, (i + 1) * LANES);
  for (let i = size - 1; i >= 0; i -= 1) {
    const at = i * LANES;
    for (let lane = 0; lane < LANES; lane += 1)
      fromStart[at + lane] = Math.max(
        fromStart[at + lane]!,
        (fromFinish[at + lane]! + durations[offset + at + lane]!) | 0,
      );
    for (let link = linkFrom[i]!; link < linkFrom[i + 1]!; link += 1) {
      const slot = linkSlot[link]!;
      const lag = linkLag[link]!;
      const list = slot < size ? fromStart : fromFinish;
      const to = (slot < size ? slot : slot - size) * LANES;
      for (let lane = 0; lane < LANES; lane += 1)
        list[to + lane] = Math.max(list[to + lane]!, (fromStart[at + lane]! + lag) | 0);
    }
  }
}

interface Ways {
  readonly fromStart: Int32Array;
  readonly fromFinish: Int32Array;
}

/** Goes through families of cases, 64 runs at a time, and tells the finishes of each case. */
export class FamilyRuns {
  readonly #network: CompiledNetwork;
  readonly #families: readonly Family[];
  readonly #cases: readonly HeldCase[];
  readonly #ways: Ways;
  /** Finish without any of a family. */
  readonly #least = new Int32Array(LANES);
  /** Times of what waits for a family, as if that were not there. */
  readonly #without: Int32Array;

  constructor(network: CompiledNetwork, families: readonly Family[], cases: readonly HeldCase[]) {
    this.#network = network;
    this.#families = families;
    this.#cases = cases;
    const values = families.length > 0 ? network.size * LANES : 0;
    this.#ways = { fromStart: new Int32Array(values), fromFinish: new Int32Array(values) };
    this.#without = new Int32Array(2 * values);
  }

  /**
   * @param space Its times are those of all lengths as drawn, and are so again afterwards.
   * @param tell Told each case and, in `space.finish`, when its runs finish.
   */
  run(space: RunSpace, offset: number, tell: (at: number) => void): void {
    if (this.#families.length === 0) return;
    waysOn(this.#network, space, offset, this.#ways);
    for (const family of this.#families) {
      this.#finishWithout(family, space, offset);
      for (const at of family.cases) {
        this.#place(family, this.#cases[at]!, space, offset);
        this.#finish(family, space);
        tell(at);
      }
      this.#place(family, asDrawn, space, offset);
    }
  }

  #finishWithout({ after, isOwn, isAfter }: Family, space: RunSpace, offset: number): void {
    const { size, isLast, linkFrom, linkSlot, linkLag, release } = this.#network;
    const without = this.#without;
    const { times, durations } = space;
    for (const i of after) {
      const at = i * LANES;
      without.fill(release[i]!, at, at + LANES);
      for (let link = linkFrom[i]!; link < linkFrom[i + 1]!; link += 1) {
        const slot = linkSlot[link]!;
        if (isOwn[slot % size] === 1) continue;
        waitFor(without, at, isAfter[slot % size] === 1 ? without : times, slot, linkLag[link]!);
      }
      for (let lane = 0; lane < LANES; lane += 1)
        without[size * LANES + at + lane] =
          (without[at + lane]! + durations[offset + at + lane]!) | 0;
    }
    const least = this.#least.fill(0);
    for (let i = 0; i < size; i += 1) {
      if (isLast[i] === 0 || isOwn[i] === 1) continue;
      waitFor(least, 0, isAfter[i] === 1 ? without : times, size + i, 0);
    }
  }

  /** The times of a family's own nodes in a case. */
  #place({ own }: Family, { ticks, leftOut }: HeldCase, space: RunSpace, offset: number): void {
    const { size, linkFrom, linkSlot, linkLag, release } = this.#network;
    const { times, durations } = space;
    for (const i of own) {
      const at = i * LANES;
      const held = ticks.get(i);
      const isFree = leftOut && held !== undefined;
      times.fill(isFree ? 0 : release[i]!, at, at + LANES);
      for (let link = linkFrom[i]!; link < linkFrom[i + 1]!; link += 1)
        waitFor(times, at, times, linkSlot[link]!, isFree ? 0 : linkLag[link]!);
      const end = size * LANES + at;
      if (held === undefined)
        for (let lane = 0; lane < LANES; lane += 1)
          times[end + lane] = (times[at + lane]! + durations[offset + at + lane]!) | 0;
      else
        for (let lane = 0; lane < LANES; lane += 1)
          times[end + lane] = (times[at + lane]! + held) | 0;
    }
  }

  #finish({ own, out }: Family, { times, finish }: RunSpace): void {
    const { size, isLast } = this.#network;
    const { fromStart } = this.#ways;
    finish.set(this.#least);
    for (const i of own) if (isLast[i] === 1) waitFor(finish, 0, times, size + i, 0);
    for (const { slot, lag, to } of out)
      for (let lane = 0; lane < LANES; lane += 1)
        finish[lane] = Math.max(
          finish[lane]!,
          (times[slot * LANES + lane]! + lag + fromStart[to * LANES + lane]!) | 0,
        );
  }
}

const asDrawn: HeldCase = { ticks: new Map(), leftOut: false };

/** Moves values up to those of a slot and so many ticks more. */
function waitFor(
  values: Int32Array,
  at: number,
  from: Int32Array,
  slot: number,
  lag: number,
): void {
  const start = slot * LANES;
  for (let lane = 0; lane < LANES; lane += 1)
    values[at + lane] = Math.max(values[at + lane]!, (from[start + lane]! + lag) | 0);
}
