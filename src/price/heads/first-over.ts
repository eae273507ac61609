/** Binary search: the smallest m in 1..max for which a monotonic predicate is true; Infinity when there is none. */
export function firstOver(over: (m: number) => boolean, max: number): number {
  if (max < 1 || !over(max)) return Infinity;
  let low = 0;
  let high = max;
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (over(middle)) high = middle;
    else low = middle;
  }
  return high;
}
