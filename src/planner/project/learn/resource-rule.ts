import { Reason, type Trail } from './trail.js';

/**
 * Time-table reasoning for one resource: an activity that must be running at some times, wherever it starts, takes its
 * share at those times, and others are pushed out of times where they no longer fit.
 *
 * @see Schutt, Feydy, Stuckey and Wallace, "Explaining the cumulative propagator", Constraints 16, 2011, for reasons that
 *   speak of one moment each; from memory, the code is our own.
 */
export class ResourceRule {
  private readonly trail: Trail;
  private readonly capacity: number;
  private readonly count: number;
  private readonly task: Int32Array;
  private readonly duration: Int32Array;
  private readonly demand: Int32Array;
  /** Latest start and earliest end of each activity when the profile was built. */
  private readonly late: Int32Array;
  private readonly early: Int32Array;
  private readonly byStart: Int32Array;
  private readonly byEnd: Int32Array;
  /** The profile of what must run: segment s from `from[s]` to `from[s + 1]`. */
  private readonly from: Int32Array;
  private readonly height: Int32Array;
  private segments = 0;
  private peak = 0;
  private readonly picked: Int32Array;
  private pickedCount = 0;

  constructor(trail: Trail, durations: Int32Array, demands: Int32Array, capacity: number) {
    this.trail = trail;
    this.capacity = capacity;
    // Largest demands first: a reason then needs few activities.
    const tasks = [...demands.keys()]
      .filter((i) => demands[i]! > 0 && durations[i]! > 0)
      .sort((a, b) => demands[b]! - demands[a]! || a - b);
    this.count = tasks.length;
    this.task = Int32Array.from(tasks);
    this.duration = Int32Array.from(tasks, (i) => durations[i]!);
    this.demand = Int32Array.from(tasks, (i) => demands[i]!);
    this.late = new Int32Array(this.count);
    this.early = new Int32Array(this.count);
    this.byStart = Int32Array.from(tasks.keys());
    this.byEnd = Int32Array.from(tasks.keys());
    this.from = new Int32Array(2 * this.count + 2);
    this.height = new Int32Array(2 * this.count + 2);
    this.picked = new Int32Array(this.count);
  }

  /** The activities that use the resource. */
  get tasks(): Int32Array {
    return this.task;
  }

  /** Draws what follows; answers false on a contradiction, then in the trail's clash. */
  apply(): boolean {
    this.trail.work += this.count;
    if (!this.buildProfile()) return false;
    if (this.peak === 0) return true;
    const { bound } = this.trail;
    for (let p = 0; p < this.count; p++) {
      // From here on the remaining demands are smaller still.
      if (this.peak + this.demand[p]! <= this.capacity) break;
      const side = 2 * this.task[p]!;
      if (bound[side] === -bound[side + 1]!) continue;
      if (!this.pushLater(p) || !this.pushEarlier(p)) return false;
    }
    return true;
  }

  private latestStart(p: number): number {
    return -this.trail.bound[2 * this.task[p]! + 1]!;
  }

  private earliestEnd(p: number): number {
    return this.trail.bound[2 * this.task[p]!]! + this.duration[p]!;
  }

  private buildProfile(): boolean {
    const { byStart, byEnd, late, early, from, height, count, demand, capacity } = this;
    const { bound } = this.trail;
    let must = 0;
    for (let p = 0; p < count; p++) {
      const side = 2 * this.task[p]!;
      late[p] = -bound[side + 1]!;
      early[p] = bound[side]! + this.duration[p]!;
      if (late[p]! < early[p]!) must++;
    }
    if (must === 0) {
      this.peak = 0;
      return true;
    }
    sortBy(late, byStart);
    sortBy(early, byEnd);
    this.segments = 0;
    this.peak = 0;
    let now = 0;
    let x = 0;
    let y = 0;
    for (;;) {
      while (x < count && late[byStart[x]!]! >= early[byStart[x]!]!) x++;
      while (y < count && late[byEnd[y]!]! >= early[byEnd[y]!]!) y++;
      if (y >= count) break;
      const end = early[byEnd[y]!]!;
      const start = x < count ? late[byStart[x]!]! : end + 1;
      const time = start < end ? start : end;
      if (start < end) now += demand[byStart[x++]!]!;
      else now -= demand[byEnd[y++]!]!;
      if (this.segments > 0 && from[this.segments - 1] === time) height[this.segments - 1] = now;
      else {
        from[this.segments] = time;
        height[this.segments++] = now;
      }
      // Ends come before starts of the same time, so this is never passing.
      if (now > this.peak) this.peak = now;
      if (now > capacity) return this.overloaded(time);
    }
    return true;
  }

  private overloaded(time: number): boolean {
    const { trail } = this;
    trail.clash.length = 0;
    this.pick(time, this.capacity, -1);
    for (let x = 0; x < this.pickedCount; x++) {
      const p = this.picked[x]!;
      trail.clash.push(2 * this.task[p]!, time + 1 - this.duration[p]!);
      trail.clash.push(2 * this.task[p]! + 1, -time);
    }
    return false;
  }

  /** Picks activities other than `but` that must run at `time` and together take more than `most`, none to spare. */
  private pick(time: number, most: number, but: number): void {
    const { picked, demand } = this;
    let sum = 0;
    let count = 0;
    for (let p = 0; p < this.count && sum <= most; p++) {
      if (p === but || this.latestStart(p) > time || this.earliestEnd(p) <= time) continue;
      picked[count++] = p;
      sum += demand[p]!;
    }
    let kept = 0;
    for (let x = 0; x < count; x++) {
      const p = picked[x]!;
      if (sum - demand[p]! > most) sum -= demand[p]!;
      else picked[kept++] = p;
    }
    this.pickedCount = kept;
  }

  /** The last segment that starts at or before `time`; -1 when none does. */
  private segmentAt(time: number): number {
    let low = -1;
    let high = this.segments - 1;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if (this.from[middle]! <= time) low = middle;
      else high = middle - 1;
    }
    return low;
  }

  private pushLater(p: number): boolean {
    const { trail, from, height, capacity } = this;
    const side = 2 * this.task[p]!;
    const duration = this.duration[p]!;
    const demand = this.demand[p]!;
    let start = trail.bound[side]!;
    // What the activity itself must occupy is in the profile already.
    const ownFrom = this.latestStart(p);
    for (let s = Math.max(0, this.segmentAt(start)); s + 1 < this.segments; s++) {
      trail.work += 1;
      if (from[s]! >= start + duration || from[s]! >= ownFrom) break;
      if (height[s]! + demand <= capacity || from[s + 1]! <= start) continue;
      while (start < from[s + 1]!) {
        const time = Math.min(from[s + 1]!, start + duration) - 1;
        if (!this.setFrom(p, time, side, time + 1, side, time + 1 - duration)) return false;
        start = time + 1;
      }
    }
    return true;
  }

  private pushEarlier(p: number): boolean {
    const { trail, from, height, capacity } = this;
    const side = 2 * this.task[p]! + 1;
    const duration = this.duration[p]!;
    const demand = this.demand[p]!;
    let end = duration - trail.bound[side]!;
    const ownTo = this.earliestEnd(p);
    for (let s = this.segmentAt(end - 1); s >= 0; s--) {
      trail.work += 1;
      const to = s + 1 < this.segments ? from[s + 1]! : from[s]!;
      if (to <= end - duration || to <= ownTo) break;
      if (height[s]! + demand <= capacity || from[s]! >= end) continue;
      while (end > from[s]!) {
        const time = Math.max(from[s]!, end - duration);
        if (!this.setFrom(p, time, side, duration - time, side, -time)) return false;
        end = time;
      }
    }
    return true;
  }

  /** Sets `(side, k)` because activity p, with `(own, ownK)`, would be running at `time`, where it does not fit. */
  private setFrom(
    p: number,
    time: number,
    side: number,
    k: number,
    own: number,
    ownK: number,
  ): boolean {
    const { trail } = this;
    this.pick(time, this.capacity - this.demand[p]!, p);
    trail.work += this.count;
    const start = trail.factsEnd;
    trail.note(own, ownK);
    for (let x = 0; x < this.pickedCount; x++) {
      const q = this.picked[x]!;
      trail.note(2 * this.task[q]!, time + 1 - this.duration[q]!);
      trail.note(2 * this.task[q]! + 1, -time);
    }
    return trail.set(side, k, Reason.facts, start, trail.factsEnd);
  }
}

/** Sorts `order` by rising key; fast when it is nearly sorted already. */
function sortBy(key: Int32Array, order: Int32Array): void {
  for (let x = 1; x < order.length; x++) {
    const p = order[x]!;
    const own = key[p]!;
    let y = x - 1;
    for (; y >= 0 && key[order[y]!]! > own; y--) order[y + 1] = order[y]!;
    order[y + 1] = p;
  }
}
