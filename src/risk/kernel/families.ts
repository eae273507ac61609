// What-ifs that change one piece of work again and again: all that comes after it is gone through once for all of them. A
// run is on time where it is so without the work, and the work is over by when what waits for it must start.
import type { CompiledNetwork } from './compile-network.js';
import type { HeldCase } from './held-case.js';
import { LATE, limitsOf, passBackward, type Limits } from './pass-backward.js';
import { passAgain, placeNode } from './pass-forward.js';
import type { RunSpace } from './run-space.js';
import { LANES } from './sampling.js';

/** Cases, by their place in the list, that hold nodes of one set; what lies on a way from one of them to another is of it. */
export interface Family {
  readonly cases: readonly number[];
  /** Positions of the set in rising order. */
  readonly own: Int32Array;
  /** Positions that wait for them, in rising order. */
  readonly after: Int32Array;
  /** Links from the set to those. */
  readonly out: readonly { readonly slot: number; readonly lag: number; readonly to: number }[];
  /** The network as if the set were not there. */
  readonly without: CompiledNetwork;
}

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
    const family = familyOf(network, places, [...widest.keys()]);
    if (family) found.push(family);
    from = to;
  }
  return found;
}

const isWithin = (some: ReadonlyMap<number, number>, all: ReadonlyMap<number, number>): boolean =>
  some.size <= all.size && [...some.keys()].every((key) => all.has(key));

/** Undefined where nothing is held, or where stoppages may interrupt work. */
function familyOf(
  network: CompiledNetwork,
  cases: readonly number[],
  positions: readonly number[],
): Family | undefined {
  const { size, linkFrom, linkSlot, linkLag, datedAt } = network;
  if (positions.length === 0 || datedAt.length > 0) return undefined;
  const isHeld = new Uint8Array(size);
  for (const position of positions) isHeld[position] = 1;
  const waits = new Uint8Array(size);
  const leads = new Uint8Array(size);
  // What is waited for stands before what waits for it.
  for (let i = 0; i < size; i += 1)
    for (let link = linkFrom[i]!; link < linkFrom[i + 1]!; link += 1)
      waits[i]! |= isHeld[linkSlot[link]! % size]! | waits[linkSlot[link]! % size]!;
  for (let i = size - 1; i >= 0; i -= 1)
    for (let link = linkFrom[i]!; link < linkFrom[i + 1]!; link += 1)
      leads[linkSlot[link]! % size]! |= isHeld[i]! | leads[i]!;
  const isOwn = isHeld.map((held, i) => held | (waits[i]! & leads[i]!));
  const all = Int32Array.from(isOwn.keys());
  const after = all.filter((i) => waits[i] === 1 && isOwn[i] === 0);
  const out: { slot: number; lag: number; to: number }[] = [];
  for (const to of after)
    for (let link = linkFrom[to]!; link < linkFrom[to + 1]!; link += 1) {
      const slot = linkSlot[link]!;
      if (isOwn[slot % size] === 1) out.push({ slot, lag: linkLag[link]!, to });
    }
  const own = all.filter((i) => isOwn[i] === 1);
  return { cases, own, after, out, without: leavingOut(network, isOwn) };
}

/** The network without the links from some positions, and without their finishes. */
function leavingOut(network: CompiledNetwork, isOut: Uint8Array): CompiledNetwork {
  const { size, linkFrom, linkSlot, linkLag, isLast } = network;
  const from = new Int32Array(size + 1);
  const slots: number[] = [];
  const lags: number[] = [];
  for (let i = 0; i < size; i += 1) {
    for (let link = linkFrom[i]!; link < linkFrom[i + 1]!; link += 1) {
      if (isOut[linkSlot[link]! % size] === 1) continue;
      slots.push(linkSlot[link]!);
      lags.push(linkLag[link]!);
    }
    from[i + 1] = slots.length;
  }
  return {
    ...network,
    linkFrom: from,
    linkSlot: Int32Array.from(slots),
    linkLag: Int32Array.from(lags),
    isLast: isLast.map((last, i) => (isOut[i] === 1 ? 0 : last)),
  };
}

/** Goes through families of cases, `LANES` runs at a time, and says which runs of each case are on time. */
export class FamilyRuns {
  readonly #network: CompiledNetwork;
  /** The network as a case has it. */
  readonly #changed: CompiledNetwork;
  readonly #families: readonly Family[];
  readonly #cases: readonly HeldCase[];
  /** In ticks. */
  readonly #deadline: number;
  readonly #limits: Limits;
  /** When the runs finish without any of a family. */
  readonly #least = new Int32Array(LANES);
  readonly #times: Int32Array;
  readonly #ready: Int32Array;
  readonly #onTime = new Uint8Array(LANES);

  constructor(
    network: CompiledNetwork,
    families: readonly Family[],
    cases: readonly HeldCase[],
    deadline: number,
  ) {
    this.#network = network;
    this.#changed = {
      ...network,
      release: network.release.slice(),
      linkLag: network.linkLag.slice(),
    };
    this.#families = families;
    this.#cases = cases;
    this.#deadline = deadline;
    this.#limits = limitsOf(network.size);
    this.#times = new Int32Array(2 * network.size * LANES);
    this.#ready = network.interrupted ? new Int32Array(network.size * LANES) : this.#times;
  }

  /**
   * @param space Its times are those of all lengths as drawn, and are so again afterwards.
   * @param onBatch Told each case with a 1 for each run that is on time; the list is written anew for the next.
   */
  run(space: RunSpace, offset: number, onBatch: (at: number, onTime: Uint8Array) => void): void {
    const { size } = this.#network;
    this.#limits.startBy.fill(LATE);
    this.#limits.finishBy.fill(this.#deadline);
    passBackward(this.#network, space, offset, this.#limits);
    const drawn = space.durations.slice(offset, offset + size * LANES);
    for (const family of this.#families) {
      this.#times.set(space.times);
      const apart = { ...space, times: this.#times, ready: this.#ready, finish: this.#least };
      passAgain(family.without, apart, offset, family.after);
      for (const at of family.cases) {
        this.#place(family, this.#cases[at]!, space, offset, drawn);
        this.#judge(family, space);
        onBatch(at, this.#onTime);
      }
      this.#place(family, asDrawn, space, offset, drawn);
    }
  }

  /** The times of a family's own positions in a case. */
  #place(
    { own }: Family,
    { ticks, leftOut }: HeldCase,
    space: RunSpace,
    offset: number,
    drawn: Int32Array,
  ): void {
    const { linkFrom, linkLag, release } = this.#network;
    for (const i of own) {
      const at = i * LANES;
      const held = ticks.get(i);
      const isFree = leftOut && held !== undefined;
      this.#changed.release[i] = isFree ? 0 : release[i]!;
      for (let link = linkFrom[i]!; link < linkFrom[i + 1]!; link += 1)
        this.#changed.linkLag[link] = isFree ? 0 : linkLag[link]!;
      if (held === undefined) space.durations.set(drawn.subarray(at, at + LANES), offset + at);
      else space.durations.fill(held, offset + at, offset + at + LANES);
      placeNode(this.#changed, space, i, offset);
    }
  }

  #judge({ own, out }: Family, { times }: RunSpace): void {
    const { size, isLast } = this.#network;
    const { start } = this.#limits;
    const onTime = this.#onTime;
    for (let lane = 0; lane < LANES; lane += 1)
      onTime[lane] = Number(this.#least[lane]! <= this.#deadline);
    for (const i of own) {
      if (isLast[i] === 0) continue;
      const end = (size + i) * LANES;
      for (let lane = 0; lane < LANES; lane += 1)
        onTime[lane]! &= Number(times[end + lane]! <= this.#deadline);
    }
    for (const { slot, lag, to } of out)
      for (let lane = 0; lane < LANES; lane += 1)
        onTime[lane]! &= Number(times[slot * LANES + lane]! + lag <= start[to * LANES + lane]!);
  }
}

const asDrawn: HeldCase = { ticks: new Map(), leftOut: false };
