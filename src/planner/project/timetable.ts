import type { Network } from './network.js';

/** What is taken of each resource over time, as steps; activities are placed one by one at their earliest. */
export class Timetable {
  private readonly network: Network;
  /** Step s runs from `from[s]` to `from[s + 1]`; the last one for ever. */
  private readonly from: Int32Array;
  private readonly used: Int32Array;
  private steps = 1;
  /** Stretches looked at. */
  looks = 0;

  constructor(network: Network) {
    this.network = network;
    this.from = new Int32Array(2 * network.n + 2);
    this.used = new Int32Array((2 * network.n + 2) * network.kinds);
  }

  clear(): void {
    this.steps = 1;
    this.from[0] = 0;
    this.used.fill(0, 0, this.network.kinds);
  }

  /** Places the activity at its earliest start from `earliest` on, and answers that start. */
  place(activity: number, earliest: number): number {
    const { from, used } = this;
    const { kinds, demand, capacities, durations } = this.network;
    const duration = durations[activity]!;
    if (duration === 0) return earliest;
    const own = activity * kinds;
    let first = this.stepAt(earliest);
    let start = earliest;
    for (let step = first; step < this.steps && from[step]! < start + duration; step++) {
      const row = step * kinds;
      for (let k = 0; k < kinds; k++) {
        if (used[row + k]! + demand[own + k]! <= capacities[k]!) continue;
        // The last step is empty, so there is always a next one here.
        first = step + 1;
        start = from[first]!;
        break;
      }
      this.looks += 1;
    }
    first = this.cutAt(first, start);
    const end = this.cutAt(this.stepAt(start + duration), start + duration);
    this.looks += end - first;
    for (let step = first; step < end; step++) {
      for (let k = 0; k < kinds; k++) used[step * kinds + k]! += demand[own + k]!;
    }
    return start;
  }

  /** The step that holds `time`. */
  private stepAt(time: number): number {
    const { from } = this;
    let low = 0;
    let high = this.steps - 1;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if (from[middle]! <= time) low = middle;
      else high = middle - 1;
    }
    return low;
  }

  /** Makes a step start at `time`, which lies in `step`, and answers its number. */
  private cutAt(step: number, time: number): number {
    const { from, used } = this;
    if (from[step] === time) return step;
    const { kinds } = this.network;
    from.copyWithin(step + 2, step + 1, this.steps);
    used.copyWithin((step + 1) * kinds, step * kinds, this.steps * kinds);
    this.steps++;
    from[step + 1] = time;
    return step + 1;
  }
}

/** What placing one activity costs beside the stretches, in looks: some sorting, and lists that are made. */
const PLACING = 8;

/** Places activities in the order of a list, each at its earliest; the list names predecessors first. */
export class Placer {
  readonly network: Network;
  private readonly table: Timetable;

  constructor(network: Network) {
    this.network = network;
    this.table = new Timetable(network);
  }

  /** Stretches looked at since this was last asked, and what placing costs beside them. */
  takeLooks(): number {
    const { looks } = this.table;
    this.table.looks = 0;
    return looks;
  }

  /** Fills `starts` and answers the makespan. */
  place(list: Int32Array, starts: Int32Array): number {
    const { before, beforeLag, heads, durations, tails } = this.network;
    this.table.clear();
    let makespan = 0;
    for (let p = 0; p < list.length; p++) {
      const i = list[p]!;
      this.table.looks += PLACING;
      let earliest = heads[i]!;
      const previous = before[i]!;
      const lags = beforeLag[i]!;
      for (let k = 0; k < previous.length; k++) {
        const j = previous[k]!;
        const at = starts[j]! + durations[j]! + lags[k]!;
        if (at > earliest) earliest = at;
      }
      const start = this.table.place(i, earliest);
      starts[i] = start;
      const end = start + durations[i]! + tails[i]!;
      if (end > makespan) makespan = end;
    }
    return makespan;
  }
}
