import { createRandom } from '../random.js';

/** Every set of done tasks met so far, each kept once with the fewest bins it was reached in. */
export class States {
  count = 0;
  /** Fewest bins in which the set was done. */
  depth: Int32Array;
  /** The state from which one bin led here; -1 for the first. */
  parent: Int32Array;
  /** Time of all done tasks. */
  doneTime: Int32Array;
  /** The sets: row `id` is `words` words. */
  sets: Int32Array;
  /** Whether a set was left out because `most` states are held. */
  full = false;

  private hash: Int32Array;
  private table: Int32Array;
  private readonly words: number;
  private readonly most: number;
  private readonly marks: Int32Array;

  constructor(n: number, words: number, memoryBytes: number) {
    this.words = words;
    // A state costs its row, four numbers, up to four table slots and its entry in a heap.
    this.most = Math.max(1024, Math.floor(memoryBytes / (4 * words + 16 + 16 + 12)));
    const random = createRandom(0x5eed);
    this.marks = Int32Array.from({ length: n }, () => random.next() | 0);
    const first = 1024;
    this.depth = new Int32Array(first);
    this.parent = new Int32Array(first);
    this.doneTime = new Int32Array(first);
    this.hash = new Int32Array(first);
    this.sets = new Int32Array(first * words);
    this.table = new Int32Array(first * 4);
  }

  /** The share of the set's hash that `task` adds; shares are combined by exclusive or. */
  markOf(task: number): number {
    return this.marks[task]!;
  }

  hashOf(id: number): number {
    return this.hash[id]!;
  }

  /** The number of a set, added if new; -1 when it was reached before in as few bins, or there is no room. */
  offer(set: Int32Array, hash: number, depth: number, parent: number, doneTime: number): number {
    const { words, sets } = this;
    const mask = this.table.length - 1;
    let slot = hash & mask;
    for (; this.table[slot] !== 0; slot = (slot + 1) & mask) {
      const id = this.table[slot]! - 1;
      if (this.hash[id] !== hash) continue;
      let word = 0;
      const row = id * words;
      while (word < words && sets[row + word] === set[word]) word++;
      if (word < words) continue;
      if (this.depth[id]! <= depth) return -1;
      this.depth[id] = depth;
      this.parent[id] = parent;
      return id;
    }
    if (this.count >= this.most) {
      this.full = true;
      return -1;
    }
    const id = this.count++;
    if (id >= this.depth.length) this.grow();
    this.sets.set(set, id * words);
    this.hash[id] = hash;
    this.depth[id] = depth;
    this.parent[id] = parent;
    this.doneTime[id] = doneTime;
    this.table[slot] = id + 1;
    if (this.count * 2 > this.table.length) this.rehash();
    return id;
  }

  private grow(): void {
    const size = this.depth.length * 2;
    this.depth = enlarged(this.depth, size);
    this.parent = enlarged(this.parent, size);
    this.doneTime = enlarged(this.doneTime, size);
    this.hash = enlarged(this.hash, size);
    this.sets = enlarged(this.sets, size * this.words);
  }

  private rehash(): void {
    const table = new Int32Array(this.table.length * 2);
    const mask = table.length - 1;
    for (let id = 0; id < this.count; id++) {
      let slot = this.hash[id]! & mask;
      while (table[slot] !== 0) slot = (slot + 1) & mask;
      table[slot] = id + 1;
    }
    this.table = table;
  }
}

function enlarged(old: Int32Array, size: number): Int32Array {
  const wide = new Int32Array(size);
  wide.set(old);
  return wide;
}
