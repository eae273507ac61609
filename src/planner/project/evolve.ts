import type { Budget } from './budget.js';
import { createRandom, type Random } from '../random.js';
import { reversedNetwork, type Network } from './network.js';
import { Placer } from './timetable.js';

interface Member {
  /** Every activity, predecessors first. */
  readonly list: Int32Array;
  readonly starts: Int32Array;
  readonly makespan: number;
}

/**
 * A population of activity lists that improves by crossing, small changes and shifting schedules right and left.
 *
 * @see Valls, Ballestin and Quintanilla, "A hybrid genetic algorithm for the resource-constrained project scheduling
 *   problem", EJOR 185, 2008, for the double shift; from memory, the code is our own.
 */
export class Population {
  private readonly network: Network;
  private readonly forward: Placer;
  private readonly backward: Placer;
  private readonly random: Random;
  private readonly mirrored: Int32Array;
  private members: Member[] = [];
  private best: Member | undefined;

  private readonly budget: Budget;

  constructor(network: Network, seed: number, budget: Budget) {
    this.network = network;
    this.budget = budget;
    this.forward = new Placer(network);
    this.backward = new Placer(reversedNetwork(network));
    this.random = createRandom(seed);
    this.mirrored = new Int32Array(network.n);
  }

  /** The schedule of a list that takes the most urgent ready activity first, shifted right and left. */
  first(): Member {
    const { heads, tails, durations } = this.network;
    const urgent = Float64Array.from(tails, (tail, i) => -(tail + durations[i]!));
    const early = Float64Array.from(heads, (head, i) => head + durations[i]!);
    for (const priority of [urgent, early]) this.admit(this.member(this.listBy(priority)));
    return this.best!;
  }

  /** Improves until `lower` is met, the budget ends or `rounds` children were made; tells each better member. */
  improve(
    lower: number,
    rounds: number,
    better: (member: { readonly starts: Int32Array; readonly makespan: number }) => void,
  ): void {
    const size = Math.max(20, Math.min(60, 3000 / Math.max(1, this.network.n)));
    let known = this.best?.makespan ?? Infinity;
    for (let round = 0; round < rounds; round++) {
      if (known <= lower || this.budget.expired()) return;
      const child =
        this.members.length < size ? this.member(this.randomList()) : this.member(this.crossed());
      this.admit(child);
      while (this.members.length > size) this.dropWorst();
      if (child.makespan < known) {
        known = child.makespan;
        better(child);
      }
    }
  }

  /** Takes in a schedule found elsewhere. */
  adopt(starts: Int32Array, makespan: number): void {
    this.admit({ list: sortedBy(starts, 1, this.network), starts, makespan });
  }

  private admit(member: Member): void {
    this.members.push(member);
    if (this.best === undefined || member.makespan < this.best.makespan) this.best = member;
  }

  private dropWorst(): void {
    let worst = 0;
    for (let i = 1; i < this.members.length; i++) {
      if (this.members[i]!.makespan >= this.members[worst]!.makespan) worst = i;
    }
    this.members.splice(worst, 1);
  }

  /** The schedule of a list, then shifted right and left for as long as that shortens it. */
  private member(list: Int32Array): Member {
    const { n, durations } = this.network;
    let starts = new Int32Array(n);
    let makespan = this.forward.place(list, starts);
    for (;;) {
      const ends = starts.map((start, i) => start + durations[i]!);
      const late = this.mirrored;
      const span = this.backward.place(sortedBy(ends, -1, this.network), late);
      const again = new Int32Array(n);
      const start = late.map((at, i) => span - at - durations[i]!);
      const shorter = this.forward.place(sortedBy(start, 1, this.network), again);
      starts = again;
      if (shorter >= makespan) break;
      makespan = shorter;
    }
    this.budget.spend(this.forward.takeLooks() + this.backward.takeLooks());
    return { list: sortedBy(starts, 1, this.network), starts, makespan };
  }

  /** A list that takes the ready activity of smallest priority first. */
  private listBy(priority: ArrayLike<number>): Int32Array {
    return this.listOf((ready) => {
      let pick = 0;
      for (let k = 1; k < ready.length; k++) {
        if (priority[ready[k]!]! < priority[ready[pick]!]!) pick = k;
      }
      return pick;
    });
  }

  /** Two ready activities are drawn and the more urgent one mostly taken. */
  private randomList(): Int32Array {
    const { tails, durations } = this.network;
    const urgency = (i: number): number => tails[i]! + durations[i]!;
    return this.listOf((ready) => {
      let pick = this.random.below(ready.length);
      for (let draw = 0; draw < 2; draw++) {
        const other = this.random.below(ready.length);
        if (urgency(ready[other]!) > urgency(ready[pick]!)) pick = other;
      }
      return pick;
    });
  }

  private listOf(choose: (ready: readonly number[]) => number): Int32Array {
    const { n, before, after } = this.network;
    const waiting = Int32Array.from(before, (list) => list.length);
    const ready: number[] = [];
    for (let i = 0; i < n; i++) if (waiting[i] === 0) ready.push(i);
    const list = new Int32Array(n);
    for (let p = 0; p < n; p++) {
      const [i] = ready.splice(choose(ready), 1) as [number];
      list[p] = i;
      for (const next of after[i]!) if (--waiting[next]! === 0) ready.push(next);
    }
    return list;
  }

  /** A stretch of one list, in the order of another before and after it; then some activities moved. */
  private crossed(): Int32Array {
    const { n } = this.network;
    const mother = this.drawn().list;
    const father = this.drawn().list;
    const a = this.random.below(n + 1);
    const b = this.random.below(n + 1);
    const [low, high] = a < b ? [a, b] : [b, a];
    const list = new Int32Array(n);
    const taken = new Uint8Array(n);
    let filled = 0;
    const takeFrom = (source: Int32Array, until: number): void => {
      for (let p = 0; filled < until; p++) {
        const i = source[p]!;
        if (taken[i] === 1) continue;
        taken[i] = 1;
        list[filled++] = i;
      }
    };
    takeFrom(mother, low);
    takeFrom(father, high);
    takeFrom(mother, n);
    const moves = this.random.below(Math.max(2, n >> 4) + 1);
    for (let m = 0; m < moves; m++) this.moveOne(list);
    return list;
  }

  /** Moves one activity to a random place between its predecessors and successors. */
  private moveOne(list: Int32Array): void {
    const { n, before, after } = this.network;
    if (n < 2) return;
    const at = this.random.below(n);
    const i = list[at]!;
    const place = new Int32Array(n);
    list.forEach((activity, p) => (place[activity] = p));
    let low = 0;
    let high = n - 1;
    for (const j of before[i]!) low = Math.max(low, place[j]! + 1);
    for (const j of after[i]!) high = Math.min(high, place[j]! - 1);
    const to = low + this.random.below(high - low + 1);
    if (to > at) list.copyWithin(at, at + 1, to + 1);
    else list.copyWithin(to + 1, to, at);
    list[to] = i;
  }

  /** The better of two members drawn. */
  private drawn(): Member {
    const a = this.members[this.random.below(this.members.length)]!;
    const b = this.members[this.random.below(this.members.length)]!;
    return a.makespan <= b.makespan ? a : b;
  }
}

/** The activities by rising (`sign` 1) or falling (-1) time, ties in the order of the network. */
function sortedBy(times: Int32Array, sign: number, network: Network): Int32Array {
  const { n, order } = network;
  const keys = new Float64Array(n);
  // One number holds both the time and the rank, so that the fast numeric sort can be used.
  for (let p = 0; p < n; p++) {
    const i = order[p]!;
    const rank = sign > 0 ? p : n - 1 - p;
    keys[p] = sign * times[i]! * n + rank;
  }
  keys.sort();
  const list = new Int32Array(n);
  for (let p = 0; p < n; p++) {
    const rank = ((keys[p]! % n) + n) % n;
    list[p] = order[sign > 0 ? rank : n - 1 - rank]!;
  }
  return list;
}
