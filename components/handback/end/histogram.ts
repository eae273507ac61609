/** One bar: runs that ended in (`from`, `to`] minutes after the window's start. */
export interface Bar {
  readonly from: number;
  readonly to: number;
  readonly runs: number;
  /** All of the bar is after the deadline. */
  readonly late: boolean;
}

export interface Histogram {
  readonly bars: readonly Bar[];
  readonly width: number;
  /** Runs outside of the shown stretch, counted in the first or last bar. */
  readonly outside: number;
}

const widths = [1, 2, 5, 10, 15, 30, 60, 120, 180, 360, 720, 1440];

/** How many values of an ascending list are at most `limit`. */
function countUpTo(sorted: Float64Array, limit: number): number {
  let low = 0;
  let high = sorted.length;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if (sorted[middle]! <= limit) low = middle + 1;
    else high = middle;
  }
  return low;
}

/**
 * Counts finishes in bars of equal minutes. Bar edges are laid from the deadline outward, so that no bar holds both runs on
 * time and runs late: a finish on the minute is on time and stands in the bar before it.
 *
 * @param sorted Minutes after the window's start, ascending.
 * @param most Most bars there is room for.
 */
export function histogramOf(sorted: Float64Array, deadline: number, most: number): Histogram {
  const runs = sorted.length;
  if (runs === 0) return { bars: [], width: 1, outside: 0 };
  // The outermost 1 in 400 runs on either side would only flatten what matters.
  const trim = Math.floor(runs / 400);
  const low = sorted[trim]!;
  const high = sorted[runs - 1 - trim]!;
  const width = widths.find((value) => (high - low) / value + 2 <= most) ?? 2880;
  const first = Math.ceil((low - deadline) / width) - 1;
  const last = Math.max(first + 1, Math.ceil((high - deadline) / width));
  const below = countUpTo(sorted, deadline + first * width);
  let counted = 0;
  const bars: Bar[] = [];
  for (let k = first; k < last; k += 1) {
    const to = deadline + (k + 1) * width;
    const upTo = k === last - 1 ? runs : countUpTo(sorted, to);
    bars.push({ from: to - width, to, runs: upTo - counted, late: k >= 0 });
    counted = upTo;
  }
  const above = runs - countUpTo(sorted, deadline + last * width);
  return { bars, width, outside: below + above };
}
