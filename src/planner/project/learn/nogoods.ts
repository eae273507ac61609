import { Reason, type Trail } from './trail.js';

/** Sets of facts that cannot all hold, learned from contradictions; each is watched through two facts that do not hold. */
export class Nogoods {
  /** All facts, nogood after nogood: side, k, side, k, ... */
  store: Int32Array = new Int32Array(4096);
  private end = 0;
  private from: number[] = [];
  private to: number[] = [];
  /** How often, and how lately, each was part of a contradiction's cause. */
  private useful: number[] = [];
  private weight = 1;
  private readonly watches: Watches[];
  private readonly trail: Trail;

  constructor(trail: Trail) {
    this.trail = trail;
    this.watches = Array.from(trail.bound, () => new Watches());
  }

  get count(): number {
    return this.from.length;
  }

  /** Keeps a nogood of two facts or more whose first does not hold, and makes the contrary of that first fact true. */
  add(facts: readonly number[]): boolean {
    const id = this.from.length;
    while (this.end + facts.length > this.store.length) {
      const wide = new Int32Array(this.store.length * 2);
      wide.set(this.store);
      this.store = wide;
    }
    const start = this.end;
    for (const value of facts) this.store[this.end++] = value;
    this.from.push(start);
    this.to.push(this.end);
    this.useful.push(this.weight);
    this.watch(id);
    return this.trail.set(facts[0]! ^ 1, 1 - facts[1]!, Reason.nogood, start, this.end, this.store);
  }

  /** Follows up a rise of `side`; answers false on a contradiction, then in the trail's clash. */
  follow(side: number): boolean {
    const { trail, store } = this;
    const list = this.watches[side]!;
    const { bound } = trail;
    const reached = bound[side]!;
    const { entries } = list;
    const count = list.count;
    trail.work += count >> 1;
    let kept = 0;
    for (let w = 0; w < count; w += 2) {
      const id = entries[w]!;
      const k = entries[w + 1]!;
      if (k <= reached) {
        const start = this.from[id]!;
        if (store[start] === side) swap(store, start, start + 2);
        const other = store[start]!;
        const contrary = 1 - store[start + 1]!;
        if (bound[other ^ 1]! < contrary) {
          const end = this.to[id]!;
          let at = start + 4;
          while (at < end && bound[store[at]!]! >= store[at + 1]!) at += 2;
          if (at < end) {
            swap(store, start + 2, at);
            this.watches[store[start + 2]!]!.add(id, store[start + 3]!);
            continue;
          }
          if (!trail.set(other ^ 1, contrary, Reason.nogood, start, end, store)) {
            entries.copyWithin(kept, w, count);
            list.count = kept + count - w;
            return false;
          }
        }
      }
      if (kept !== w) {
        entries[kept] = id;
        entries[kept + 1] = k;
      }
      kept += 2;
    }
    list.count = kept;
    return true;
  }

  /** Drops half of the longer nogoods, the least used; and those that can never come true. At the root only. */
  thin(): void {
    const { trail, store } = this;
    const order = [...this.from.keys()].sort((a, b) => this.useful[b]! - this.useful[a]!);
    const keep = new Set(order.slice(0, order.length >> 1));
    trail.work += this.from.length;
    const old = { from: this.from, to: this.to, useful: this.useful };
    this.from = [];
    this.to = [];
    this.useful = [];
    for (const list of this.watches) list.count = 0;
    let end = 0;
    for (let id = 0; id < old.from.length; id++) {
      const start = old.from[id]!;
      const stop = old.to[id]!;
      if (!keep.has(id) && stop - start > 4) continue;
      let dead = false;
      for (let at = start; at < stop; at += 2) {
        if (trail.fails(store[at]!, store[at + 1]!)) dead = true;
      }
      if (dead) continue;
      store.copyWithin(end, start, stop);
      this.from.push(end);
      this.to.push(end + stop - start);
      this.useful.push(old.useful[id]!);
      end += stop - start;
      this.watch(this.from.length - 1);
    }
    this.end = end;
  }

  private watch(id: number): void {
    const start = this.from[id]!;
    for (const at of [start, start + 2])
      this.watches[this.store[at]!]!.add(id, this.store[at + 1]!);
  }

  /** Marks the nogood at `start` of the store as part of a cause. */
  credit(start: number): void {
    let low = 0;
    let high = this.from.length - 1;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if (this.from[middle]! <= start) low = middle;
      else high = middle - 1;
    }
    this.useful[low]! += this.weight;
  }

  /** Makes later uses count for more. */
  age(): void {
    this.weight *= 1.001;
    if (this.weight < 1e100) return;
    this.weight *= 1e-100;
    this.useful = this.useful.map((value) => value * 1e-100);
  }
}

/** The nogoods that watch one side: number, k, number, k, ... */
class Watches {
  /** Entries filled; twice the nogoods. */
  count = 0;
  entries: Int32Array = new Int32Array(8);

  add(id: number, k: number): void {
    if (this.count === this.entries.length) {
      const wide = new Int32Array(this.count * 2);
      wide.set(this.entries);
      this.entries = wide;
    }
    this.entries[this.count++] = id;
    this.entries[this.count++] = k;
  }
}

function swap(store: Int32Array, a: number, b: number): void {
  if (a === b) return;
  const side = store[a]!;
  const k = store[a + 1]!;
  store[a] = store[b]!;
  store[a + 1] = store[b + 1]!;
  store[b] = side;
  store[b + 1] = k;
}
