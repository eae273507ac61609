import { compileNetwork, inOneShape, type CompiledNetwork } from './compile-network.js';
import { Works } from './forward-layout.js';
import { heldCase, type HeldCase, type WhatIf } from './held-case.js';
import { movedBy } from './moved-by.js';
import type { RiskNetwork } from './network.js';
import { passAgain, passForward } from './pass-forward.js';
import { randomState } from './random.js';
import { eachBatch } from './run-block.js';
import { runSpace, type RunSpace } from './run-space.js';
import { LANES, TICKS } from './sampling.js';
import { chanceOf, type Chance } from './simulation.js';

export interface WhatIfOptions {
  readonly runs: number;
  readonly seed: number;
  /** Finishing on the minute is on time. */
  readonly deadlineMinutes: number;
}

export interface WhatIfFigures {
  readonly onTime: Chance;
  readonly meanMinutes: number;
}

/** From one case to the next: what is held and let go, and the positions that this moves. */
interface Turn {
  /** Positions and the ticks they are held at; -1: as drawn. */
  readonly set: readonly (readonly [position: number, ticks: number])[];
  /** Positions that ask for no time, and those that do so again. */
  readonly freed: readonly number[];
  readonly bound: readonly number[];
  readonly again: Int32Array;
  /** Positions that stand as they would with nothing held: their times are taken back. */
  readonly back: Int32Array;
  /** Links of those positions that lead to the network's own slot again. */
  readonly own: readonly number[];
  /** Links of those positions whose slot is not the network's own: what is left out is reached past. */
  readonly past: readonly (readonly [link: number, slot: number])[];
}

const AS_DRAWN = -1;

/**
 * For each position left out that waits for one finish only: the slot of what comes before it. Its own time is that
 * one's, so nobody need work it out.
 */
function reachedPast(
  { size, linkFrom, linkSlot }: CompiledNetwork,
  left: ReadonlySet<number>,
): ReadonlyMap<number, number> {
  const past = new Map<number, number>();
  // In rising order, so that what comes before is known already.
  for (const position of [...left].sort((a, b) => a - b)) {
    const link = linkFrom[position]!;
    const slot = linkSlot[link]!;
    if (linkFrom[position + 1]! - link !== 1 || slot < size) continue;
    past.set(position, past.get(slot - size) ?? slot);
  }
  return past;
}

function turnsOf(network: CompiledNetwork, cases: readonly HeldCase[]): readonly Turn[] {
  const { size, linkFrom, linkSlot, isLast, forward } = network;
  let before: ReadonlyMap<number, number> = new Map();
  let freeBefore: ReadonlySet<number> = new Set();
  // Positions that were worked out since all stood as with nothing held.
  let worked: ReadonlySet<number> = new Set();
  // Links that earlier cases lead past what they leave out.
  const led = new Set<number>();
  return cases.map(({ ticks: now, leftOut }) => {
    const freeNow = leftOut ? new Set(now.keys()) : new Set<number>();
    const set = [
      ...[...before.keys()]
        .filter((position) => !now.has(position))
        .map((position) => [position, AS_DRAWN] as const),
      ...[...now].filter(([position, ticks]) => before.get(position) !== ticks),
    ];
    const freed = [...freeNow].filter((position) => !freeBefore.has(position));
    const bound = [...freeBefore].filter((position) => !freeNow.has(position));
    const changed = new Set([...set.map(([position]) => position), ...freed, ...bound]);
    before = now;
    freeBefore = freeNow;
    const reached = reachedPast(network, freeNow);
    const movedOf = (from: ReadonlySet<number>): Int32Array =>
      movedBy(network, from).filter(
        (position) =>
          forward.works[position] !== Works.none &&
          (!reached.has(position) || isLast[position] === 1),
      );
    const fromBefore = movedOf(changed);
    const fromNothing = movedOf(new Set(now.keys()));
    // A case far from the one before is quicker from nothing held.
    const again = fromNothing.length < fromBefore.length ? fromNothing : fromBefore;
    const moved = new Set(again);
    const back =
      again === fromBefore
        ? new Int32Array(0)
        : Int32Array.from(worked).filter((at) => !moved.has(at));
    worked = again === fromBefore ? new Set([...worked, ...moved]) : moved;
    const own: number[] = [];
    const past: (readonly [number, number])[] = [];
    for (const position of again) {
      for (let link = linkFrom[position]!; link < linkFrom[position + 1]!; link += 1) {
        if (led.delete(link)) own.push(link);
        const slot = reached.get(linkSlot[link]! % size);
        if (slot !== undefined) past.push([link, slot]);
      }
    }
    for (const [link] of past) led.add(link);
    return { set, freed, bound, again, back, own, past };
  });
}

/** A batch with nothing held: its lengths, and the times that they make. */
interface AsDrawn {
  readonly drawn: Int32Array;
  readonly times: Int32Array;
}

/** Takes one turn: lengths, dates and gaps of what changes, then the times of all that this moves. */
function takeTurn(
  turn: Turn,
  network: CompiledNetwork,
  original: CompiledNetwork,
  space: RunSpace,
  offset: number,
  { drawn, times }: AsDrawn,
): void {
  const { size, linkFrom, linkLag, linkSlot, release } = network;
  for (const [position, ticks] of turn.set) {
    const at = position * LANES;
    if (ticks === AS_DRAWN) space.durations.set(drawn.subarray(at, at + LANES), offset + at);
    else space.durations.fill(ticks, offset + at, offset + at + LANES);
  }
  for (const position of turn.freed) {
    release[position] = 0;
    linkLag.fill(0, linkFrom[position], linkFrom[position + 1]);
  }
  for (const position of turn.bound) {
    release[position] = original.release[position]!;
    for (let link = linkFrom[position]!; link < linkFrom[position + 1]!; link += 1)
      linkLag[link] = original.linkLag[link]!;
  }
  for (const link of turn.own) linkSlot[link] = original.linkSlot[link]!;
  for (const position of turn.back)
    for (const at of [position * LANES, (size + position) * LANES])
      space.times.set(times.subarray(at, at + LANES), at);
  for (const [link, slot] of turn.past) linkSlot[link] = slot;
  passAgain(network, space, offset, turn.again);
}

/** Many changes to one network, tried on each batch of runs as somebody draws it. */
export class WhatIfRuns {
  readonly #original: CompiledNetwork;
  /** The network as a case has it. */
  readonly #network: CompiledNetwork;
  readonly #turns: readonly Turn[];
  /** In ticks. */
  readonly #deadline: number;
  readonly #asDrawn: AsDrawn;
  readonly #onTime: Float64Array;
  readonly #sums: Float64Array;
  #runs = 0;

  /** @throws {RangeError} When minutes that are held make no sense. */
  constructor(original: CompiledNetwork, cases: readonly WhatIf[], deadlineMinutes: number) {
    const { size } = original;
    this.#original = original;
    this.#network = inOneShape({
      ...original,
      release: original.release.slice(),
      linkLag: original.linkLag.slice(),
      linkSlot: original.linkSlot.slice(),
    });
    this.#turns = turnsOf(
      original,
      cases.map((item) => heldCase(original, item)),
    );
    this.#deadline = Math.floor(deadlineMinutes * TICKS);
    this.#asDrawn = {
      drawn: new Int32Array(size * LANES),
      times: new Int32Array(2 * size * LANES),
    };
    this.#onTime = new Float64Array(cases.length);
    this.#sums = new Float64Array(cases.length);
  }

  /** @param space Its times are those of all lengths as drawn; both are changed, and nobody may need them again. */
  take(space: RunSpace, offset: number, lanesUsed: number): void {
    const original = this.#original;
    const network = this.#network;
    const { drawn, times } = this.#asDrawn;
    drawn.set(space.durations.subarray(offset, offset + network.size * LANES));
    times.set(space.times);
    network.release.set(original.release);
    network.linkLag.set(original.linkLag);
    network.linkSlot.set(original.linkSlot);
    for (let k = 0; k < this.#turns.length; k += 1) {
      takeTurn(this.#turns[k]!, network, original, space, offset, this.#asDrawn);
      let onTime = 0;
      let sum = 0;
      for (let lane = 0; lane < lanesUsed; lane += 1) {
        const finish = space.finish[lane]!;
        onTime += Number(finish <= this.#deadline);
        sum += finish;
      }
      this.#onTime[k]! += onTime;
      this.#sums[k]! += sum;
    }
    this.#runs += lanesUsed;
  }

  /** How many were taken. */
  get runs(): number {
    return this.#runs;
  }

  /** What all batches that were taken say of each case. */
  figures(): readonly WhatIfFigures[] {
    const runs = this.#runs;
    return Array.from(this.#sums, (sum, k) => ({
      onTime: chanceOf(this.#onTime[k]!, runs),
      meanMinutes: sum / runs / TICKS,
    }));
  }
}

/**
 * Chance of being on time and mean finish of many changes to one network, each over all runs and all on the same random
 * words as `simulate` with that seed: the lengths are drawn once, and each case works out again only what its change
 * moves. So cases that lie near each other in the list are quick.
 *
 * @throws {RangeError} When the options or the network make no sense.
 */
export function whatIfs(
  riskNetwork: RiskNetwork,
  { runs, seed, deadlineMinutes }: WhatIfOptions,
  cases: readonly WhatIf[],
): readonly WhatIfFigures[] {
  if (cases.length === 0) return [];
  const network = compileNetwork(riskNetwork, cases);
  const space = runSpace(network, randomState(seed), 1);
  const tried = new WhatIfRuns(network, cases, deadlineMinutes);
  eachBatch(network, space, runs, (offset, lanesUsed) => {
    passForward(network, space, offset);
    tried.take(space, offset, lanesUsed);
  });
  return tried.figures();
}
