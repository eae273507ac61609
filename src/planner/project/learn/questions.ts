import type { Trail } from './trail.js';

const SPAN = 2 ** 32;

/** Questions "does unknown i reach k?" that facts of contradictions ask, the one asked most and latest first. */
export class Questions {
  /** The question taken last: does the lower bound `side` reach `from`? */
  side = 0;
  from = 0;
  private readonly trail: Trail;
  private readonly numberOf = new Map<number, number>();
  private unknown: number[] = [];
  private k: number[] = [];
  private weight: number[] = [];
  private place: number[] = [];
  private heap: number[] = [];
  private step = 1;
  /** Questions taken off the heap, with the level at which they were found answered. */
  private readonly off: number[] = [];
  private readonly offLevel: number[] = [];

  constructor(trail: Trail) {
    this.trail = trail;
  }

  get count(): number {
    return this.k.length;
  }

  /** Makes the question that a fact answers count for more. */
  raise(side: number, k: number): void {
    const unknown = side >> 1;
    const from = (side & 1) === 0 ? k : 1 - k;
    const key = unknown * SPAN + from;
    let q = this.numberOf.get(key);
    if (q === undefined) {
      q = this.k.length;
      this.numberOf.set(key, q);
      this.unknown.push(unknown);
      this.k.push(from);
      this.weight.push(0);
      this.place.push(this.heap.length);
      this.heap.push(q);
    }
    this.weight[q]! += this.step;
    if (this.place[q]! >= 0) this.up(this.place[q]!);
  }

  age(): void {
    this.step *= 1.05;
    if (this.step < 1e100) return;
    this.step *= 1e-100;
    for (let q = 0; q < this.weight.length; q++) this.weight[q]! *= 1e-100;
  }

  /** Takes off the first open question; `side` and `from` are then set. Answers false when all are answered. */
  next(): boolean {
    while (this.heap.length > 0) {
      const q = this.pop();
      const side = 2 * this.unknown[q]!;
      const k = this.k[q]!;
      const answered = this.trail.holds(side, k) || this.trail.fails(side, k);
      this.off.push(q);
      this.offLevel.push(answered ? this.trail.level : this.trail.level + 1);
      if (answered) continue;
      this.side = side;
      this.from = k;
      return true;
    }
    return false;
  }

  /** Puts back the questions that were answered above `level`. */
  backTo(level: number): void {
    while (this.off.length > 0 && this.offLevel[this.off.length - 1]! > level) {
      const q = this.off.pop()!;
      this.offLevel.pop();
      this.place[q] = this.heap.length;
      this.heap.push(q);
      this.up(this.place[q]);
    }
  }

  /** Forgets every question. At the root only. */
  clear(): void {
    this.numberOf.clear();
    for (const list of [this.unknown, this.k, this.weight, this.place, this.heap]) list.length = 0;
    this.off.length = 0;
    this.offLevel.length = 0;
  }

  private pop(): number {
    const { heap, place } = this;
    const first = heap[0]!;
    const last = heap.pop()!;
    place[first] = -1;
    if (heap.length > 0) {
      heap[0] = last;
      place[last] = 0;
      this.down(0);
    }
    return first;
  }

  private up(at: number): void {
    const { heap, place, weight } = this;
    const q = heap[at]!;
    const own = weight[q]!;
    while (at > 0) {
      const parent = (at - 1) >> 1;
      const above = heap[parent]!;
      if (weight[above]! >= own) break;
      heap[at] = above;
      place[above] = at;
      at = parent;
    }
    heap[at] = q;
    place[q] = at;
  }

  private down(at: number): void {
    const { heap, place, weight } = this;
    const q = heap[at]!;
    const own = weight[q]!;
    for (;;) {
      let child = 2 * at + 1;
      if (child >= heap.length) break;
      if (child + 1 < heap.length && weight[heap[child + 1]!]! > weight[heap[child]!]!) child++;
      const below = heap[child]!;
      if (weight[below]! <= own) break;
      heap[at] = below;
      place[below] = at;
      at = child;
    }
    heap[at] = q;
    place[q] = at;
  }
}
