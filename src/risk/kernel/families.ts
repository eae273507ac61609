// What-ifs that change one piece of work again and again: all that comes after it is gone through once for all of them,
// backwards. A run is on time where it is so without the work, and the work is over by when what waits for it must start.
import { inOneShape, type CompiledNetwork } from './compile-network.js';
import type { HeldCase } from './held-case.js';
import { movedBy } from './moved-by.js';
import { LatestStarts } from './latest-starts.js';
import { passAgain, placeNode } from './pass-forward.js';
import type { RunSpace } from './run-space.js';
import { LANES } from './sampling.js';

/** A link of the network; `to` is the position that waits. */
interface Wait {
  readonly slot: number;
  readonly lag: number;
  readonly to: number;
}

/** Cases, by their place in the list, that hold nodes of one set; what lies on a way from one of them to another is of it. */
export interface Family {
  readonly cases: readonly number[];
  /** The network with all that every case leaves out left out, so that only what differs is gone through case by case. */
  readonly network: CompiledNetwork;
  /** Positions that every case leaves out, where they are told apart. */
  readonly gone: ReadonlySet<number>;
  /** Positions whose times that changes, in rising order. */
  readonly moved: Int32Array;
  /** Positions of the set in rising order. */
  readonly own: Int32Array;
  /** Positions that wait for them, in rising order. */
  readonly after: Int32Array;
  /** Links from the set to those. */
  readonly out: readonly Wait[];
  /** Links to those from positions that do not wait for the set. */
  readonly beside: readonly Wait[];
  /** Positions that nothing waits for, beside the set and what waits for it. */
  readonly last: Int32Array;
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
    found.push(...apart(network, cases, from, to));
    from = to;
  }
  return found;
}

/**
 * The families of some neighbours. Where other work lies between what they hold (units of several visits), those that leave
 * all of the last visits out are told apart from the others: there nothing is held on both sides of that work.
 */
function apart(
  network: CompiledNetwork,
  cases: readonly HeldCase[],
  from: number,
  to: number,
): Family[] {
  const places = Array.from({ length: to - from }, (_, k) => from + k);
  const held = new Set(places.flatMap((at) => [...cases[at]!.ticks.keys()]));
  const whole = familyOf(network, places, [...held], nobody);
  if (!whole) return [];
  const isNested = places.every(
    (at) => cases[at]!.leftOut && (at === from || isWithin(cases[at]!.ticks, cases[at - 1]!.ticks)),
  );
  if (whole.own.length === held.size || !isNested) return [whole];
  for (let last = to - 1; last > from; last -= 1) {
    const gone = new Set(cases[last]!.ticks.keys());
    if (gone.size === 0) continue;
    const differs = [...held].filter((position) => !gone.has(position));
    if (differs.length === 0) continue;
    const some = places.slice(0, last - from + 1);
    const family = familyOf(network, some, differs, gone);
    if (family?.own.length === differs.length)
      return [family, ...(last + 1 < to ? apart(network, cases, last + 1, to) : [])];
  }
  return [whole];
}

const nobody: ReadonlySet<number> = new Set();

const isWithin = (some: ReadonlyMap<number, number>, all: ReadonlyMap<number, number>): boolean =>
  some.size <= all.size && [...some.keys()].every((key) => all.has(key));

/** Undefined where nothing is held, or where stoppages may interrupt work. */
function familyOf(
  original: CompiledNetwork,
  cases: readonly number[],
  positions: readonly number[],
  gone: ReadonlySet<number>,
): Family | undefined {
  const network = leavingOut(original, gone);
  const { size, linkFrom, linkSlot, linkLag, isLast, datedAt } = network;
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
  const out: Wait[] = [];
  const beside: Wait[] = [];
  for (const to of after)
    for (let link = linkFrom[to]!; link < linkFrom[to + 1]!; link += 1) {
      const slot = linkSlot[link]!;
      const from = slot % size;
      if (isOwn[from] === 1) out.push({ slot, lag: linkLag[link]!, to });
      else if (waits[from] === 0) beside.push({ slot, lag: linkLag[link]!, to });
    }
  const own = all.filter((i) => isOwn[i] === 1);
  const last = all.filter((i) => isLast[i] === 1 && isOwn[i] === 0 && waits[i] === 0);
  const moved = movedBy(network, gone);
  return { cases, network, gone, moved, own, after, out, beside, last };
}

/** The network with positions that ask for no time: neither their dates nor their gaps count. */
function leavingOut(network: CompiledNetwork, gone: ReadonlySet<number>): CompiledNetwork {
  if (gone.size === 0) return network;
  const release = network.release.slice();
  const linkLag = network.linkLag.slice();
  const least = network.least.slice();
  const greatest = network.greatest.slice();
  for (const position of gone) {
    release[position] = 0;
    least[position] = 0;
    greatest[position] = 0;
    linkLag.fill(0, network.linkFrom[position], network.linkFrom[position + 1]);
  }
  return inOneShape({ ...network, release, linkLag, least, greatest });
}

/** A position worked out anew for a case: how long it takes there, and what it waits for. */
interface Placed {
  readonly position: number;
  /** Absent: as drawn. */
  readonly held: number | undefined;
  /** It asks for no time: neither its date nor its gaps count. */
  readonly isFree: boolean;
  /** What each of its links waits for: what is left out is reached past. */
  readonly slots: readonly number[];
}

/** From the times of one case to those of the next. */
interface Turn {
  /** In rising order. */
  readonly placed: readonly Placed[];
  /** The family's links to what comes after it, as this case has them. */
  readonly out: Family['out'];
}

/** The turns of a family's cases, and a last one back to all lengths as drawn. */
function turnsOf({ network, own, out }: Family, cases: readonly HeldCase[]): readonly Turn[] {
  const { size, linkFrom, linkSlot, isLast } = network;
  // What the times of a position were worked out from, and how often they have been.
  const from = new Map<number, string>();
  const count = new Map<number, number>();
  const turnTo = ({ ticks, leftOut }: HeldCase): Turn => {
    const past = new Map<number, number>();
    const reached = (slot: number): number => past.get(slot % size) ?? slot;
    const placed: Placed[] = [];
    for (const position of own) {
      const held = ticks.get(position);
      const isFree = leftOut && held !== undefined;
      const slots = [...linkSlot.subarray(linkFrom[position], linkFrom[position + 1])].map(reached);
      const [only] = slots;
      // Its own time is that of what comes before it, so nobody need work it out.
      if (isFree && slots.length === 1 && only! >= size && isLast[position] === 0) {
        past.set(position, only!);
        continue;
      }
      const now = JSON.stringify([
        held,
        isFree,
        slots.map((slot) => [slot, count.get(slot % size)]),
      ]);
      if (now === from.get(position)) continue;
      from.set(position, now);
      count.set(position, (count.get(position) ?? 0) + 1);
      placed.push({ position, held, isFree, slots });
    }
    return { placed, out: out.map((link) => ({ ...link, slot: reached(link.slot) })) };
  };
  turnTo(asDrawn);
  return [...cases, asDrawn].map(turnTo);
}

const asDrawn: HeldCase = { ticks: new Map(), leftOut: false };

/** A family with the turns of its cases, and its network as a case has it. */
interface Worked extends Family {
  readonly latest: LatestStarts;
  readonly changed: CompiledNetwork;
  readonly turns: readonly Turn[];
}

/** Goes through families of cases, `LANES` runs at a time, and says which runs of each case are on time. */
export class FamilyRuns {
  readonly #network: CompiledNetwork;
  readonly #families: readonly Worked[];
  /** In ticks. */
  readonly #deadline: number;
  /** Worked out by whoever draws the runs. */
  readonly #known: LatestStarts | undefined;
  readonly #drawn: Int32Array;
  readonly #isLess: boolean;
  /** 1 where a run is on time without any of a family. */
  readonly #without = new Uint8Array(LANES);
  readonly #onTime = new Uint8Array(LANES);

  constructor(
    network: CompiledNetwork,
    families: readonly Family[],
    cases: readonly HeldCase[],
    deadline: number,
    known?: LatestStarts,
  ) {
    this.#network = network;
    this.#known = known;
    const due = { startBy: deadline, finishBy: new Int32Array(network.size).fill(deadline) };
    this.#families = families.map((family) => ({
      ...family,
      latest:
        known && family.network === network
          ? known
          : new LatestStarts(family.network, due, family.after),
      changed: inOneShape({
        ...network,
        release: family.network.release.slice(),
        linkLag: family.network.linkLag.slice(),
        linkSlot: network.linkSlot.slice(),
      }),
      turns: turnsOf(
        family,
        family.cases.map((at) => cases[at]!),
      ),
    }));
    this.#deadline = deadline;
    this.#isLess = cases.every((item) => item.leftOut);
    this.#drawn = new Int32Array(network.size * LANES);
  }

  /**
   * @param space Its times are those of all lengths as drawn, and are so again afterwards.
   * @param onBatch Told each case with a 1 for each run that is on time; the list is written anew for the next.
   */
  run(space: RunSpace, offset: number, onBatch: (at: number, onTime: Uint8Array) => void): void {
    const { size } = this.#network;
    this.#drawn.set(space.durations.subarray(offset, offset + size * LANES));
    for (const family of this.#families) {
      this.#leaveOut(family, space, offset);
      if (family.latest !== this.#known) family.latest.pass(space, offset);
      this.#judgeWithout(family, space);
      if (this.#isLess && !this.#mayHelp(space.finish)) {
        for (const at of family.cases) onBatch(at, this.#onTime);
        this.#putBack(family, space, offset);
        continue;
      }
      family.turns.forEach((turn, k) => {
        for (const placed of turn.placed) this.#place(family, placed, space, offset);
        const at = family.cases[k];
        if (at === undefined) return;
        this.#onTime.set(this.#without);
        this.#judge(family.latest, family.own, turn.out, space);
        onBatch(at, this.#onTime);
      });
      this.#putBack(family, space, offset);
    }
  }

  /** Times and limits without what every case of a family leaves out. */
  #leaveOut({ network, gone, moved }: Family, space: RunSpace, offset: number): void {
    if (gone.size === 0) return;
    for (const position of gone) {
      const at = offset + position * LANES;
      space.durations.fill(0, at, at + LANES);
    }
    passAgain(network, space, offset, moved);
  }

  #putBack({ gone, moved }: Family, space: RunSpace, offset: number): void {
    if (gone.size === 0) return;
    for (const position of gone) {
      const at = position * LANES;
      space.durations.set(this.#drawn.subarray(at, at + LANES), offset + at);
    }
    passAgain(this.#network, space, offset, moved);
  }

  /**
   * Whether less of a family can bring a late run on time. Where it can not, the runs on time stay what they are with all
   * of it.
   */
  #mayHelp(finish: Int32Array): boolean {
    let some = 0;
    for (let lane = 0; lane < LANES; lane += 1) {
      const isOnTime = Number(finish[lane]! <= this.#deadline);
      some |= this.#without[lane]! & (isOnTime ^ 1);
      this.#onTime[lane] = isOnTime;
    }
    return some !== 0;
  }

  #place(
    { network, changed }: Worked,
    { position, held, isFree, slots }: Placed,
    space: RunSpace,
    offset: number,
  ): void {
    const { linkFrom, linkLag, release } = network;
    const at = position * LANES;
    changed.release[position] = isFree ? 0 : release[position]!;
    slots.forEach((slot, k) => {
      const link = linkFrom[position]! + k;
      changed.linkLag[link] = isFree ? 0 : linkLag[link]!;
      changed.linkSlot[link] = slot;
    });
    if (held === undefined) space.durations.set(this.#drawn.subarray(at, at + LANES), offset + at);
    else space.durations.fill(held, offset + at, offset + at + LANES);
    placeNode(changed, space, position, offset);
  }

  /** What does not hang on a family: each of it may make a run late by itself. */
  #judgeWithout({ network, latest, after, beside, last }: Worked, space: RunSpace): void {
    const { release, forward } = network;
    const { starts } = latest;
    const onTime = this.#onTime.fill(1);
    for (const i of after) {
      // Otherwise something that it waits for is later than its date, and asked about.
      if (forward.mayBind[i] === 0) continue;
      const { position, before } = latest.of(i);
      const from = release[i]! + before;
      for (let lane = 0; lane < LANES; lane += 1)
        onTime[lane]! &= Number(from <= starts[position * LANES + lane]!);
    }
    this.#judge(latest, last, beside, space);
    this.#without.set(onTime);
  }

  /** Leaves those runs on time in which the last of these positions are over and nobody is kept waiting too long. */
  #judge(
    latest: LatestStarts,
    positions: Int32Array,
    waits: readonly Wait[],
    { times }: RunSpace,
  ): void {
    const { size, isLast, forward } = this.#network;
    const { slotAt, slotLag } = forward;
    const { starts } = latest;
    const onTime = this.#onTime;
    for (const i of positions) {
      if (isLast[i] === 0) continue;
      const end = slotAt[size + i]! * LANES;
      const by = this.#deadline - slotLag[size + i]!;
      for (let lane = 0; lane < LANES; lane += 1) onTime[lane]! &= Number(times[end + lane]! <= by);
    }
    for (const { slot, lag, to } of waits) {
      const { position, before } = latest.of(to);
      const from = slotAt[slot]! * LANES;
      const wait = lag + slotLag[slot]! + before;
      for (let lane = 0; lane < LANES; lane += 1)
        onTime[lane]! &= Number(times[from + lane]! + wait <= starts[position * LANES + lane]!);
    }
  }
}
