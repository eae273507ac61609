/** A queue of numbered states, the one with the smallest key first; the older number first among equals. */
export class Heap {
  size = 0;
  private keys = new Float64Array(16);
  private ids = new Int32Array(16);

  push(id: number, key: number): void {
    if (this.size === this.ids.length) this.grow();
    const { keys, ids } = this;
    let at = this.size++;
    while (at > 0) {
      const up = (at - 1) >> 1;
      if (!comesFirst(key, id, keys[up]!, ids[up]!)) break;
      keys[at] = keys[up]!;
      ids[at] = ids[up]!;
      at = up;
    }
    keys[at] = key;
    ids[at] = id;
  }

  /** @throws {RangeError} When empty. */
  pop(): number {
    if (this.size === 0) throw new RangeError('the heap is empty');
    const { keys, ids } = this;
    const first = ids[0]!;
    const last = --this.size;
    const key = keys[last]!;
    const id = ids[last]!;
    let at = 0;
    for (;;) {
      let down = 2 * at + 1;
      if (down >= last) break;
      if (down + 1 < last && comesFirst(keys[down + 1]!, ids[down + 1]!, keys[down]!, ids[down]!))
        down++;
      if (!comesFirst(keys[down]!, ids[down]!, key, id)) break;
      keys[at] = keys[down]!;
      ids[at] = ids[down]!;
      at = down;
    }
    keys[at] = key;
    ids[at] = id;
    return first;
  }

  private grow(): void {
    const keys = new Float64Array(this.size * 2);
    keys.set(this.keys);
    this.keys = keys;
    const ids = new Int32Array(this.size * 2);
    ids.set(this.ids);
    this.ids = ids;
  }
}

function comesFirst(keyA: number, idA: number, keyB: number, idB: number): boolean {
  return keyA < keyB || (keyA === keyB && idA < idB);
}
