/** Bits of a value by which it is put into a bucket: a night's ticks mostly have one each. */
const BUCKET_BITS = 15;

/** Below this many values, sorting is as quick. */
const FEW = 64;

/**
 * The value that ascending order has at each rank: the least has rank 0. Ranks rise; the list is left as it is.
 *
 * O(values) for each rank that shares its bucket with many others, for all ranks together otherwise.
 */
export function valuesAt(values: Int32Array, ranks: readonly number[]): number[] {
  if (values.length <= FEW) {
    const sorted = values.slice().sort();
    return ranks.map((rank) => sorted[rank]!);
  }
  let least = values[0]!;
  let greatest = least;
  for (let k = 1; k < values.length; k += 1) {
    const value = values[k]!;
    if (value < least) least = value;
    else if (value > greatest) greatest = value;
  }
  const shift = Math.max(0, 32 - Math.clz32(greatest - least) - BUCKET_BITS);
  const counts = new Int32Array(((greatest - least) >>> shift) + 1);
  for (let k = 0; k < values.length; k += 1) counts[(values[k]! - least) >>> shift]! += 1;
  let bucket = 0;
  let below = 0;
  return ranks.map((rank) => {
    while (below + counts[bucket]! <= rank) {
      below += counts[bucket]!;
      bucket += 1;
    }
    if (shift === 0) return least + bucket;
    const alike = values.filter((value) => (value - least) >>> shift === bucket);
    return valuesAt(alike, [rank - below])[0]!;
  });
}
