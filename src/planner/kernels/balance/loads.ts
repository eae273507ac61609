import type { Line } from './line.js';

/**
 * Walks every maximal load of one bin: each set of tasks that fits, whose predecessors are done or in it, and to which no
 * further task could be added. Each set is met once.
 */
export class Loads {
  /** The load being visited: the first `size` entries of `chosen`, with `room` left in the bin. */
  readonly chosen: Int32Array;
  size = 0;
  room = 0;
  /** The tasks that could start now, the chosen ones among them: the first `queued` entries. */
  readonly queue: Int32Array;
  queued = 0;
  /** For each task, whether it is in the load. */
  readonly taken: Uint8Array;
  /** Undone direct predecessors of each task, the load counted as done. */
  readonly waiting: Int32Array;
  /** Whether the last walk met its limit and may have left out loads. */
  cut = false;

  private readonly line: Line;
  private left = 0;
  private visit: () => boolean = () => true;

  constructor(line: Line) {
    this.line = line;
    this.chosen = new Int32Array(line.n);
    this.queue = new Int32Array(line.n);
    this.taken = new Uint8Array(line.n);
    this.waiting = new Int32Array(line.n);
  }

  /**
   * Visits the maximal loads of a bin, given `waiting` and the first `queued` entries of `queue`.
   *
   * Loads with more than `mostRoom` left are passed over. Stops after `limit` visits, or once `visit` answers false.
   */
  walk(mostRoom: number, limit: number, visit: () => boolean): void {
    this.size = 0;
    this.room = this.line.capacity;
    this.cut = false;
    this.left = limit;
    this.visit = visit;
    this.grow(0, mostRoom);
  }

  private grow(from: number, mostRoom: number): void {
    const { queue, taken, waiting, chosen } = this;
    const { times, successors } = this.line;
    const queued = this.queued;
    for (let i = from; i < queued; i++) {
      const task = queue[i]!;
      const time = times[task]!;
      if (time > this.room) continue;
      const next = successors[task]!;
      this.room -= time;
      taken[task] = 1;
      chosen[this.size++] = task;
      for (let k = 0; k < next.length; k++) {
        if (--waiting[next[k]!]! === 0) queue[this.queued++] = next[k]!;
      }
      this.grow(i + 1, mostRoom);
      for (let k = 0; k < next.length; k++) waiting[next[k]!]!++;
      this.queued = queued;
      this.size--;
      taken[task] = 0;
      this.room += time;
      if (this.cut) return;
      // From here on the task is left out, so a maximal load has less room than it needs.
      if (time - 1 < mostRoom) mostRoom = time - 1;
      if (mostRoom < 0) return;
    }
    if (this.room > mostRoom) return;
    if (this.left-- <= 0 || !this.visit()) this.cut = true;
  }
}
