/**
 * The bounds of whole-number unknowns, with the reason of every change, so that a contradiction can be traced back.
 *
 * Unknown i has two sides: side 2i is its lower bound, side 2i + 1 its upper bound with the sign turned. Both only rise.
 * A fact `(side, k)` says that the side is at least k; its contrary is `(side ^ 1, 1 - k)`.
 */
export class Trail {
  readonly bound: Int32Array;
  /** Changes since the root level, oldest first. */
  size = 0;
  side: Int32Array = new Int32Array(1024);
  old: Int32Array = new Int32Array(1024);
  /** The change of the same side before this one; -1 if none since the root. */
  previous: Int32Array = new Int32Array(1024);
  private kind: Int32Array = new Int32Array(1024);
  private a: Int32Array = new Int32Array(1024);
  private b: Int32Array = new Int32Array(1024);

  /** The newest change of each side; -1 if none since the root. */
  readonly newest: Int32Array;
  level = 0;
  private levelStart: number[] = [0];
  private levelFacts: number[] = [0];

  /** Facts that reasons point into: side, k, side, k, ... */
  facts: Int32Array = new Int32Array(4096);
  factsEnd = 0;
  /** Work done by whoever reads or changes the bounds, in steps. */
  work = 0;

  /** The facts of the last contradiction: side, k, side, k, ... */
  readonly clash: number[] = [];

  constructor(lower: Int32Array, upper: Int32Array) {
    const n = lower.length;
    this.bound = new Int32Array(2 * n);
    this.newest = new Int32Array(2 * n).fill(-1);
    for (let i = 0; i < n; i++) {
      this.bound[2 * i] = lower[i]!;
      this.bound[2 * i + 1] = -upper[i]!;
    }
  }

  /** Where the changes of a level start. */
  startOf(level: number): number {
    return this.levelStart[level]!;
  }

  /** The level at which a change was made. */
  levelOf(change: number): number {
    let low = 0;
    let high = this.level;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if (this.levelStart[middle]! <= change) low = middle;
      else high = middle - 1;
    }
    return low;
  }

  /** The change that made `(side, k)` true; -1 when it holds at the root. The fact must be true. */
  changeOf(side: number, k: number): number {
    let change = this.newest[side]!;
    while (change >= 0 && this.old[change]! >= k) change = this.previous[change]!;
    return change;
  }

  holds(side: number, k: number): boolean {
    return this.bound[side]! >= k;
  }

  fails(side: number, k: number): boolean {
    return this.bound[side ^ 1]! >= 1 - k;
  }

  /** Notes a fact for a reason to come. */
  note(side: number, k: number): void {
    if (this.factsEnd + 2 > this.facts.length) this.facts = doubled(this.facts);
    this.facts[this.factsEnd++] = side;
    this.facts[this.factsEnd++] = k;
  }

  /** Makes `(side, k)` true on a trial, one level deeper. */
  decide(side: number, k: number): void {
    this.level++;
    this.levelStart[this.level] = this.size;
    this.levelFacts[this.level] = this.factsEnd;
    this.push(side, k, Reason.trial, 0, 0);
  }

  /**
   * Makes `(side, k)` true for a reason; answers false, with the facts in `clash`, when its contrary holds.
   *
   * Reason `arc`: a is the side it follows from, b the distance. `facts`: a and b bound the facts noted. `nogood`: as facts,
   * in the store of nogoods, of which the fact's contrary is one.
   */
  set(side: number, k: number, kind: number, a: number, b: number, store?: Int32Array): boolean {
    if (this.bound[side]! >= k) return true;
    if (this.bound[side ^ 1]! >= 1 - k) {
      this.clash.length = 0;
      this.reasonsOf(side, k, kind, a, b, store, this.clash);
      this.clash.push(side ^ 1, 1 - k);
      return false;
    }
    this.push(side, k, kind, a, b);
    return true;
  }

  /** Appends the facts from which a change follows, or at least `(side, k)` of it. */
  explain(change: number, k: number, store: Int32Array, into: number[]): void {
    const kind = this.kind[change]!;
    this.reasonsOf(this.side[change]!, k, kind, this.a[change]!, this.b[change]!, store, into);
  }

  isTrial(change: number): boolean {
    return this.kind[change] === Reason.trial;
  }

  /** Where in the store the nogood lies that made the change; -1 when another reason did. */
  nogoodOf(change: number): number {
    return this.kind[change] === Reason.nogood ? this.a[change]! : -1;
  }

  private reasonsOf(
    side: number,
    k: number,
    kind: number,
    a: number,
    b: number,
    store: Int32Array | undefined,
    into: number[],
  ): void {
    if (kind === Reason.arc) {
      into.push(a, k - b);
    } else if (kind === Reason.facts) {
      for (let at = a; at < b; at++) into.push(this.facts[at]!);
    } else if (kind === Reason.nogood) {
      for (let at = a; at < b; at += 2) {
        // A nogood names each side once, so this is the fact that the change denies.
        if (store![at] === (side ^ 1)) continue;
        into.push(store![at]!, store![at + 1]!);
      }
    }
  }

  private push(side: number, k: number, kind: number, a: number, b: number): void {
    const change = this.size++;
    if (change >= this.side.length) this.enlarge();
    this.side[change] = side;
    this.old[change] = this.bound[side]!;
    this.previous[change] = this.newest[side]!;
    this.kind[change] = kind;
    this.a[change] = a;
    this.b[change] = b;
    this.newest[side] = change;
    this.bound[side] = k;
  }

  /** Takes back every change above `level`. */
  backTo(level: number): void {
    if (level >= this.level) return;
    const start = this.levelStart[level + 1]!;
    for (let change = this.size - 1; change >= start; change--) {
      const side = this.side[change]!;
      this.bound[side] = this.old[change]!;
      this.newest[side] = this.previous[change]!;
    }
    this.size = start;
    this.factsEnd = this.levelFacts[level + 1]!;
    this.level = level;
  }

  /** At the root, forgets why: what holds there is never explained. */
  settle(): void {
    for (let change = 0; change < this.size; change++) this.newest[this.side[change]!] = -1;
    this.size = 0;
    this.factsEnd = 0;
  }

  private enlarge(): void {
    this.side = doubled(this.side);
    this.old = doubled(this.old);
    this.previous = doubled(this.previous);
    this.kind = doubled(this.kind);
    this.a = doubled(this.a);
    this.b = doubled(this.b);
  }
}

/** Why a bound changed. */
export const Reason = { trial: 0, arc: 1, facts: 2, nogood: 3 } as const;

function doubled(old: Int32Array): Int32Array<ArrayBuffer> {
  const wide = new Int32Array(old.length * 2);
  wide.set(old);
  return wide;
}
