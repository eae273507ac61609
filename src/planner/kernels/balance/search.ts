import type { Budget } from '../budget.js';
import { byFallingTime, halvesOf, latestBins, packingBound, sixthsOf } from './bounds.js';
import { Heap } from './heap.js';
import type { Line } from './line.js';
import { Loads } from './loads.js';
import { States } from './states.js';
import { betterTasks } from './swap.js';

/** `exhausted`: no answer has fewer bins than the best known. `full`: the memory is, and nothing more can be proven. */
export type SearchState = 'improved' | 'exhausted' | 'full' | 'paused';

export interface SearchOutcome {
  readonly state: SearchState;
  /** The bin of each task, when improved. */
  readonly bins?: Int32Array;
}

/** A search of one direction of a line that can be paused and taken up again. */
export interface LineSearch {
  /** Whether there is anything left to search. */
  readonly open: boolean;
  /** States opened so far. */
  readonly nodes: number;
  /** Searches for an answer of fewer than `upper` bins for about `turn` steps, or until one is found. */
  run(upper: number, turn: number, budget: Budget): SearchOutcome;
}

/** Most loads looked at when a state is first opened; those cut short are opened again when nothing else is left. */
const FIRST_LOADS = 100;
/** How many times more loads are looked at whenever states are opened again. */
const MORE_LOADS = 10;

/**
 * A best-first search that goes round the depths: one state with b bins filled, then one with b + 1, and so on.
 *
 * A state is the set of done tasks. It is remembered, so no set is opened twice in as many bins.
 */
export function createSearch(line: Line, memoryBytes: number): LineSearch {
  return new CyclicSearch(line, memoryBytes);
}

class CyclicSearch implements LineSearch {
  open = true;
  nodes = 0;
  private readonly line: Line;
  private readonly states: States;
  private readonly loads: Loads;
  private readonly falling: Int32Array;
  private readonly byDue: Int32Array;
  private readonly late: Int32Array;
  private readonly halves: Int32Array;
  private readonly sixths: Int32Array;
  private readonly better: readonly Int32Array[];
  private readonly heaps: Heap[] = [];
  private readonly set: Int32Array;
  private readonly remaining: Int32Array;
  /** States whose loads were not all looked at. */
  private cut: number[] = [];
  private mostLoads = FIRST_LOADS;
  private depth = 0;
  private steps = 0;
  private upper = 0;
  private from = 0;
  private undone = 0;
  private undoneWithFollowers = 0;
  private found = -1;
  private budget: Budget | undefined;
  private readonly visit = (): boolean => this.visitLoad();

  constructor(line: Line, memoryBytes: number) {
    this.line = line;
    this.states = new States(line.n, line.words, memoryBytes);
    this.loads = new Loads(line);
    this.falling = byFallingTime(line);
    this.late = latestBins(line);
    this.byDue = Int32Array.from(
      [...this.late.keys()].sort((a, b) => this.late[a]! - this.late[b]! || a - b),
    );
    this.halves = line.times.map((time) => halvesOf(time, line.capacity));
    this.sixths = line.times.map((time) => sixthsOf(time, line.capacity));
    this.better = betterTasks(line);
    this.set = new Int32Array(line.words);
    this.remaining = new Int32Array(line.n);
    this.states.offer(this.set, 0, 0, -1, 0);
    this.heapAt(0).push(0, 0);
  }

  run(upper: number, turn: number, budget: Budget): SearchOutcome {
    this.upper = upper;
    this.budget = budget;
    this.found = -1;
    this.steps = 0;
    let idle = 0;
    while (this.steps < turn && !budget.expired()) {
      const deepest = upper - 2;
      if (this.depth > deepest) this.depth = 0;
      const heap = this.heapAt(this.depth);
      if (heap.size > 0) {
        idle = 0;
        const id = heap.pop();
        if (this.states.depth[id] === this.depth) this.openState(id);
        if (this.found >= 0) return { state: 'improved', bins: this.binsOf(this.found) };
        if (this.states.full) return this.closed('full');
      } else if (++idle > deepest + 1) {
        if (this.cut.length === 0) return this.closed('exhausted');
        this.reopen();
        idle = 0;
      }
      this.depth++;
    }
    return { state: 'paused' };
  }

  private closed(state: SearchState): SearchOutcome {
    this.open = false;
    return { state };
  }

  private reopen(): void {
    this.mostLoads *= MORE_LOADS;
    const again = this.cut;
    this.cut = [];
    for (const id of again) this.enqueue(id);
  }

  private heapAt(depth: number): Heap {
    return (this.heaps[depth] ??= new Heap());
  }

  /** Small idle time per bin first; among alike, few but large tasks first. */
  private enqueue(id: number): void {
    const depth = this.states.depth[id]!;
    const idle = depth * this.line.capacity - this.states.doneTime[id]!;
    const row = id * this.line.words;
    let done = 0;
    for (let w = 0; w < this.line.words; w++) done += bitsIn(this.states.sets[row + w]!);
    const share = (0.02 * this.line.capacity) / 30;
    this.heapAt(depth).push(id, idle / Math.max(1, depth) + share * done);
  }

  private openState(id: number): void {
    const { line, states, loads, set } = this;
    const { n, words, capacity } = line;
    const slack = (this.upper - 1) * capacity - line.total;
    const idle = this.depth * capacity - states.doneTime[id]!;
    if (idle > slack) return;
    this.nodes++;
    this.steps++;
    this.from = id;
    for (let w = 0; w < words; w++) set[w] = states.sets[id * words + w]!;
    loads.waiting.set(line.predecessorCount);
    loads.queued = 0;
    let remaining = 0;
    this.undone = 0;
    this.undoneWithFollowers = 0;
    for (let task = 0; task < n; task++) {
      const next = line.successors[task]!;
      if ((set[task >> 5]! >>> (task & 31)) & 1) {
        for (let k = 0; k < next.length; k++) loads.waiting[next[k]!]!--;
      } else {
        this.undone++;
        if (next.length > 0) this.undoneWithFollowers++;
      }
    }
    for (let k = 0; k < n; k++) {
      const task = this.falling[k]!;
      if ((set[task >> 5]! >>> (task & 31)) & 1) continue;
      this.remaining[remaining++] = line.times[task]!;
      if (loads.waiting[task] === 0) loads.queue[loads.queued++] = task;
    }
    if (this.depth + packingBound(this.remaining, remaining, capacity) >= this.upper) return;
    loads.walk(slack - idle, this.mostLoads, this.visit);
    if (loads.cut && this.found < 0) this.cut.push(id);
  }

  private visitLoad(): boolean {
    const { line, states, loads, set, from } = this;
    this.steps++;
    if ((this.steps & 1023) === 0 && this.budget!.expired()) return false;
    if (this.isDominated()) return true;
    const { chosen, size } = loads;
    const bins = this.depth + 1;
    let hash = states.hashOf(from);
    for (let i = 0; i < size; i++) {
      const task = chosen[i]!;
      set[task >> 5]! |= 1 << (task & 31);
      hash ^= states.markOf(task);
    }
    const last = size === this.undone;
    if (last || this.meetsDueBins(bins)) {
      const doneTime = states.doneTime[from]! + line.capacity - loads.room;
      const id = states.offer(set, hash, bins, from, doneTime);
      if (id >= 0) {
        if (last) this.found = id;
        else this.enqueue(id);
      }
    }
    for (let i = 0; i < size; i++) {
      const task = chosen[i]!;
      set[task >> 5]! &= ~(1 << (task & 31));
    }
    return this.found < 0 && !states.full;
  }

  /** Whether another load of this bin is at least as good: one with a task swapped, or one that frees followers. */
  private isDominated(): boolean {
    const { line, loads, better } = this;
    const { chosen, size, room, taken, waiting } = loads;
    let frees = this.undoneWithFollowers === 0;
    for (let i = 0; i < size; i++) {
      const task = chosen[i]!;
      if (line.successors[task]!.length > 0) frees = true;
      const swaps = better[task]!;
      const most = line.times[task]! + room;
      for (let k = 0; k < swaps.length; k++) {
        const other = swaps[k]!;
        if (taken[other] === 0 && waiting[other] === 0 && line.times[other]! <= most) {
          if (((this.set[other >> 5]! >>> (other & 31)) & 1) === 0) return true;
        }
      }
    }
    return !frees;
  }

  /** Whether what is due by each bin still fits, with `bins` filled and one bin fewer than the best answer's in all. */
  private meetsDueBins(bins: number): boolean {
    const { byDue, late, set, halves, sixths } = this;
    const { n, times, capacity } = this.line;
    const last = this.upper - 1 - bins;
    let sum = 0;
    let half = 0;
    let sixth = 0;
    for (let i = 0; i < n; i++) {
      const task = byDue[i]!;
      if ((set[task >> 5]! >>> (task & 31)) & 1) continue;
      const left = last + late[task]!;
      sum += times[task]!;
      half += halves[task]!;
      sixth += sixths[task]!;
      if (left <= 0 || sum > left * capacity || half > 2 * left || sixth > 6 * left) return false;
    }
    return true;
  }

  private binsOf(found: number): Int32Array {
    const { states, line } = this;
    const path: number[] = [];
    for (let id = found; id >= 0; id = states.parent[id]!) path.push(id);
    path.reverse();
    const bins = new Int32Array(line.n).fill(-1);
    path.forEach((id, at) => {
      for (let task = 0; task < line.n; task++) {
        const word = states.sets[id * line.words + (task >> 5)]!;
        if (bins[task] === -1 && (word >>> (task & 31)) & 1) bins[task] = at - 1;
      }
    });
    return bins;
  }
}

function bitsIn(word: number): number {
  let x = word - ((word >>> 1) & 0x55555555);
  x = (x & 0x33333333) + ((x >>> 2) & 0x33333333);
  return Math.imul((x + (x >>> 4)) & 0x0f0f0f0f, 0x01010101) >>> 24;
}
