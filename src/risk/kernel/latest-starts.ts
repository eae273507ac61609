import { meets, sooner } from './branchless.js';
import type { CompiledNetwork } from './compile-network.js';
import type { RunSpace } from './run-space.js';
import { LANES } from './sampling.js';

/** What all starts and finishes must keep to, in ticks. */
export interface Due {
  readonly startBy: number;
  /** By position. */
  readonly finishBy: Int32Array;
}

/** Where a start stands in the list of starts: so many ticks before that of another position. */
interface Standing {
  readonly position: number;
  readonly before: number;
}

/** A position whose starts are worked out run by run. */
interface Worked {
  readonly position: number;
  readonly finishBy: number;
  /** Those that wait for the finish, and those that wait for the start. */
  readonly ends: readonly Standing[];
  readonly begins: readonly Standing[];
  /** Whether what is due may come before all that waits. */
  readonly mayBeDue: boolean;
  /** Closed stretches that a run may meet, as places in the network's lists, the last first. */
  readonly closed: readonly number[];
}

/**
 * The latest start of each position in each run, so that it and all that waits for it keep to what is due.
 *
 * What no run can come to is left out beforehand, by the least and greatest lengths: closed stretches, and limits that
 * others are always sooner than. A position of fixed length that only one waits for stands so many ticks before that one
 * in every run, and is not worked out.
 */
export class LatestStarts {
  /** `LANES` values for each position that is worked out. */
  readonly starts: Int32Array;
  readonly #network: CompiledNetwork;
  readonly #due: Due;
  /** The last position first. */
  readonly #worked: readonly Worked[];
  readonly #standing: ReadonlyMap<number, Standing>;

  /** @param wanted In rising order, and with each all that waits for it; absent: all positions. */
  constructor(network: CompiledNetwork, due: Due, wanted?: Int32Array) {
    this.#network = network;
    this.#due = due;
    this.starts = new Int32Array(network.size * LANES);
    const { worked, standing } = laidOut(network, due, wanted ?? network.nodeAt.map((_, i) => i));
    this.#worked = worked;
    this.#standing = standing;
  }

  /** Where the starts of a position stand, and how many ticks before those. */
  of(position: number): Standing {
    return this.#standing.get(position)!;
  }

  /** Works them out for a batch whose lengths begin at `offset`. */
  pass(space: RunSpace, offset: number): void {
    const isStopped = this.#network.datedAt.length > 0;
    for (const worked of this.#worked) {
      if (isStopped) this.#startsAround(worked, space, offset);
      else {
        this.#startsBefore(worked, space.durations, offset);
        if (worked.closed.length > 0) this.#startsBetween(worked, space.durations, offset);
      }
    }
  }

  /** Latest starts where nothing is closed. */
  #startsBefore(worked: Worked, durations: Int32Array, offset: number): void {
    const { position, finishBy, ends, begins, mayBeDue } = worked;
    const { starts } = this;
    const { startBy } = this.#due;
    const lanes = LANES;
    const at = position * lanes;
    const length = offset + at;
    const [first] = ends;
    if (first && !mayBeDue) {
      const from = first.position * lanes;
      const { before } = first;
      for (let lane = 0; lane < lanes; lane += 1)
        starts[at + lane] = (starts[from + lane]! - before - durations[length + lane]!) | 0;
    } else if (first) {
      const from = first.position * lanes;
      const { before } = first;
      for (let lane = 0; lane < lanes; lane += 1) {
        const by = sooner(finishBy, (starts[from + lane]! - before) | 0);
        starts[at + lane] = sooner(startBy, (by - durations[length + lane]!) | 0);
      }
    } else {
      for (let lane = 0; lane < lanes; lane += 1)
        starts[at + lane] = sooner(startBy, (finishBy - durations[length + lane]!) | 0);
    }
    for (let k = 1; k < ends.length; k += 1) {
      const from = ends[k]!.position * lanes;
      const { before } = ends[k]!;
      for (let lane = 0; lane < lanes; lane += 1) {
        const by = (starts[from + lane]! - before - durations[length + lane]!) | 0;
        starts[at + lane] = sooner(starts[at + lane]!, by);
      }
    }
    for (const begun of begins) {
      const from = begun.position * lanes;
      const { before } = begun;
      for (let lane = 0; lane < lanes; lane += 1)
        starts[at + lane] = sooner(starts[at + lane]!, (starts[from + lane]! - before) | 0);
    }
  }

  /**
   * Moves the latest starts of a position to before closed stretches, where no dated event can happen. These come in
   * order, so one look at each is enough, and most lie before or after all of the runs.
   */
  #startsBetween({ position, closed }: Worked, durations: Int32Array, offset: number): void {
    const { closedStart, closedEnd } = this.#network;
    const { starts } = this;
    const lanes = LANES;
    const at = position * lanes;
    const length = offset + at;
    let first = starts[at]!;
    let last = first;
    let longest = 0;
    for (let lane = 0; lane < lanes; lane += 1) {
      const begins = starts[at + lane]!;
      const lasts = durations[length + lane]!;
      if (begins < first) first = begins;
      if (begins + lasts > last) last = begins + lasts;
      if (lasts > longest) longest = lasts;
    }
    for (const k of closed) {
      const from = closedStart[k]!;
      const to = closedEnd[k]!;
      if (to <= first) return;
      if (from >= last) continue;
      for (let lane = 0; lane < lanes; lane += 1) {
        const begins = starts[at + lane]!;
        const lasts = durations[length + lane]!;
        const early = (from - lasts - begins) & meets(begins, lasts, from, to);
        starts[at + lane] = (begins + early) | 0;
      }
      first = Math.min(first, from - longest);
    }
  }

  /** Latest starts of a position that stoppages may interrupt. */
  #startsAround({ position, finishBy, ends, begins }: Worked, space: RunSpace, offset: number) {
    const { starts } = this;
    for (let lane = 0; lane < LANES; lane += 1) {
      const soonest = (by: number, all: readonly Standing[]): number =>
        all.reduce(
          (least, { position: from, before }) =>
            Math.min(least, starts[from * LANES + lane]! - before),
          by,
        );
      const at = position * LANES + lane;
      const minutes = space.durations[offset + at]!;
      const startBy = soonest(this.#due.startBy, begins);
      const over = soonest(finishBy, ends);
      let latest = latestTicks(this.#network, space, position, lane, over, minutes);
      if (startBy < latest)
        latest = latestTicks(this.#network, space, position, lane, startBy + minutes, minutes);
      starts[at] = latest;
    }
  }
}

/** The least and greatest that something comes to in any run. */
interface Range {
  readonly least: number;
  readonly greatest: number;
}

interface Laid {
  readonly worked: readonly Worked[];
  readonly standing: ReadonlyMap<number, Standing>;
}

function laidOut(network: CompiledNetwork, { startBy, finishBy }: Due, wanted: Int32Array): Laid {
  const { size, linkFrom, linkSlot, linkLag, datedAt } = network;
  const isStopped = datedAt.length > 0;
  const worked: Worked[] = [];
  const standing = new Map<number, Standing>();
  const ranges = new Map<number, Range>();
  const ends = Array.from({ length: size }, (): Standing[] => []);
  const begins = Array.from({ length: size }, (): Standing[] => []);
  for (const i of wanted.toReversed()) {
    const least = network.least[i]!;
    const greatest = network.greatest[i]!;
    const due = finishBy[i]!;
    const end = soonestOf(ends[i]!, ranges);
    const begin = soonestOf(begins[i]!, ranges);
    const over = Math.min(due, end.greatest);
    const latest = Math.min(startBy, over - least, begin.greatest);
    const earliest = Math.min(startBy, Math.min(due, end.least) - greatest, begin.least);
    const met = isStopped ? noStretches : metBy(network, i, { least: earliest, greatest: over });
    const mayBeDue = due < end.greatest || startBy < over - least;
    const isFixed = least === greatest && met.closed.length === 0 && !isStopped;
    const [after] = [...ends[i]!, ...begins[i]!];
    let own: Standing = { position: i, before: 0 };
    if (isFixed && !mayBeDue && ends[i]!.length === 1 && begins[i]!.length === 0)
      own = { ...after!, before: after!.before + least };
    else {
      ranges.set(i, { least: Math.min(earliest, met.earliest), greatest: latest });
      worked.push({
        position: i,
        finishBy: due,
        ends: ends[i]!,
        begins: begins[i]!,
        mayBeDue,
        closed: met.closed,
      });
    }
    standing.set(i, own);
    for (let link = linkFrom[i]!; link < linkFrom[i + 1]!; link += 1) {
      const slot = linkSlot[link]!;
      const waits = { ...own, before: own.before + linkLag[link]! };
      if (slot < size) begins[slot]!.push(waits);
      else ends[slot - size]!.push(waits);
    }
  }
  return { worked, standing };
}

/** The soonest of what several positions leave. */
const soonestOf = (all: readonly Standing[], ranges: ReadonlyMap<number, Range>): Range => ({
  least: Math.min(...all.map(({ position, before }) => ranges.get(position)!.least - before)),
  greatest: Math.min(...all.map(({ position, before }) => ranges.get(position)!.greatest - before)),
});

const noStretches = { closed: [], earliest: Infinity };

/**
 * The closed stretches that a position may meet, the last first, and the earliest start before them.
 *
 * @param within From the earliest start to the latest finish with nothing closed.
 */
function metBy(
  { closedFrom, closedStart, closedEnd, greatest }: CompiledNetwork,
  i: number,
  within: Range,
): { readonly closed: readonly number[]; readonly earliest: number } {
  const closed: number[] = [];
  let earliest = within.least;
  for (let k = closedFrom[i + 1]! - 1; k >= closedFrom[i]! && greatest[i]! > 0; k -= 1) {
    if (closedEnd[k]! <= earliest || closedStart[k]! >= within.greatest) continue;
    closed.push(k);
    earliest = Math.min(earliest, closedStart[k]! - greatest[i]!);
  }
  return { closed, earliest };
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
