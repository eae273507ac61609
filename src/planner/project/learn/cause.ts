import type { Nogoods } from './nogoods.js';
import type { Questions } from './questions.js';
import type { Trail } from './trail.js';

/**
 * Traces a contradiction back to a set of facts that cannot all hold, just one of them from the last level.
 *
 * After `trace`, `facts` is side, k, side, k, ...: the one of the last level first, then the latest of the others, and
 * `level` is the level at which the first one's contrary follows.
 */
export class Cause {
  readonly facts: number[] = [];
  level = 0;

  private readonly trail: Trail;
  private readonly nogoods: Nogoods;
  private readonly questions: Questions;
  /** For each side, the fact needed of it and the change that made it true; -1 when none is. */
  private readonly needK: Int32Array;
  private readonly needChange: Int32Array;
  private readonly seen: number[] = [];
  private readonly reasons: number[] = [];
  private start = 0;
  private late = 0;

  constructor(trail: Trail, nogoods: Nogoods, questions: Questions) {
    this.trail = trail;
    this.nogoods = nogoods;
    this.questions = questions;
    this.needK = new Int32Array(trail.bound.length);
    this.needChange = new Int32Array(trail.bound.length).fill(-1);
  }

  /** Answers false when the contradiction holds at the root, so that nothing is possible any more. */
  trace(): boolean {
    const { trail, reasons, needK, needChange } = this;
    let newest = -1;
    for (let at = 0; at < trail.clash.length; at += 2) {
      newest = Math.max(newest, trail.changeOf(trail.clash[at]!, trail.clash[at + 1]!));
    }
    if (newest < 0) return false;
    const level = trail.levelOf(newest);
    if (level === 0) return false;
    this.start = trail.startOf(level);
    this.late = 0;
    this.seen.length = 0;
    for (let at = 0; at < trail.clash.length; at += 2)
      this.need(trail.clash[at]!, trail.clash[at + 1]!);
    let change = newest;
    for (; ; change--) {
      const side = trail.side[change]!;
      if (needChange[side] !== change) continue;
      if (this.late === 1) break;
      const k = needK[side]!;
      needChange[side] = -1;
      this.late--;
      reasons.length = 0;
      trail.explain(change, k, this.nogoods.store, reasons);
      trail.work += reasons.length;
      const nogood = trail.nogoodOf(change);
      if (nogood >= 0) this.nogoods.credit(nogood);
      for (let at = 0; at < reasons.length; at += 2) this.need(reasons[at]!, reasons[at + 1]!);
    }
    this.collect(trail.side[change]!);
    return true;
  }

  private need(side: number, k: number): void {
    const { needK, needChange } = this;
    const known = needChange[side]!;
    if (known >= 0 && needK[side]! >= k) return;
    const change = this.trail.changeOf(side, k);
    if (change < 0) return;
    if (change >= this.start && known < this.start) this.late++;
    if (known < 0) this.seen.push(side);
    this.questions.raise(side, k);
    needK[side] = k;
    needChange[side] = change;
  }

  private collect(first: number): void {
    const { trail, facts, needK, needChange } = this;
    facts.length = 0;
    facts.push(first, needK[first]!);
    let latest = -1;
    trail.work += this.seen.length;
    const kept = this.seen.filter(
      (side, at) =>
        side !== first &&
        needChange[side]! >= 0 &&
        this.seen.indexOf(side) === at &&
        !this.follows(side),
    );
    for (const side of kept) {
      facts.push(side, needK[side]!);
      if (needChange[side]! > latest) {
        latest = needChange[side]!;
        const at = facts.length - 2;
        [facts[2], facts[3], facts[at], facts[at + 1]] = [
          facts[at],
          facts[at + 1],
          facts[2],
          facts[3],
        ] as [number, number, number, number];
      }
    }
    this.level = latest < 0 ? 0 : trail.levelOf(latest);

    for (const side of this.seen) needChange[side] = -1;
  }

  /** Whether a needed fact follows from others that are needed and were true before it. */
  private follows(side: number): boolean {
    const { trail, reasons, needK, needChange } = this;
    const change = needChange[side]!;
    if (trail.isTrial(change)) return false;
    reasons.length = 0;
    trail.explain(change, needK[side]!, this.nogoods.store, reasons);
    trail.work += reasons.length;
    for (let at = 0; at < reasons.length; at += 2) {
      const other = reasons[at]!;
      const k = reasons[at + 1]!;
      if (trail.changeOf(other, k) < 0) continue;
      const held = needChange[other]!;
      // "Before it" keeps two facts from each vouching for the other.
      if (held < 0 || held >= change || needK[other]! < k) return false;
    }
    return true;
  }
}
