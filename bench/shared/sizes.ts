/** Windows and activities of plans of which each is twice the one before. */
export const sizes = [
  [500, 1000],
  [1000, 2000],
  [2000, 4000],
  [4000, 8000],
  [8000, 16_000],
] as const;

/** Packages held against every window in benches with verdicts: 192,000 pairs at the largest size, under the limit. */
export const PACKAGES_WITH_VERDICTS = 24;

/**
 * The power of the size by which the values grow: 1 is linear, 2 square. The slope of the straight line through their
 * logarithms that leaves the least squares.
 */
export function exponent(
  points: readonly { readonly size: number; readonly value: number }[],
): number {
  const logs = points.map(({ size, value }) => [Math.log(size), Math.log(value)] as const);
  const mean = (at: 0 | 1): number => logs.reduce((sum, item) => sum + item[at], 0) / logs.length;
  const [x, y] = [mean(0), mean(1)];
  const over = logs.reduce((sum, item) => sum + (item[0] - x) * (item[1] - y), 0);
  return over / logs.reduce((sum, item) => sum + (item[0] - x) ** 2, 0);
}
