/**
 * Puts the value of each rank where an ascending order would have it, and gives them: the least has rank 0. The list is
 * left in another order. Ranks rise.
 *
 * O(values) where ranks are few, mostly.
 */
export function valuesAt(values: Int32Array, ranks: readonly number[]): number[] {
  let from = 0;
  return ranks.map((rank) => {
    settle(values, from, rank);
    from = rank;
    return values[rank]!;
  });
}

/** Moves values about until that of a rank stands there, none before it greater and none after it less. */
function settle(values: Int32Array, from: number, rank: number): void {
  let low = from;
  let high = values.length - 1;
  while (low < high) {
    const pivot = middleOf(values[low]!, values[(low + high) >> 1]!, values[high]!);
    let i = low;
    let j = high;
    while (i <= j) {
      while (values[i]! < pivot) i += 1;
      while (values[j]! > pivot) j -= 1;
      if (i > j) break;
      const value = values[i]!;
      values[i] = values[j]!;
      values[j] = value;
      i += 1;
      j -= 1;
    }
    if (rank <= j) high = j;
    else if (rank >= i) low = i;
    else return;
  }
}

function middleOf(a: number, b: number, c: number): number {
  return Math.max(Math.min(a, b), Math.min(Math.max(a, b), c));
}
