/** A place in a drawing, in CSS pixels. */
export interface Place {
  readonly x: number;
  readonly y: number;
}

const round = (n: number): number => Math.round(n * 100) / 100;

/** SVG path of a line that keeps its height until the next place; level stretches are one stroke. */
export function stepLine(places: readonly Place[]): string {
  const [first, ...rest] = places;
  if (!first) return '';
  let path = `M${round(first.x)} ${round(first.y)}`;
  let height = first.y;
  for (const { x, y } of rest) {
    if (y === height) continue;
    path += `H${round(x)}V${round(y)}`;
    height = y;
  }
  return `${path}H${round(places.at(-1)!.x)}`;
}

/** Even, round values from 0 to `most`, at most `count` steps apart: 1, 2, 2.5 or 5 times a power of ten. */
export function moneyTicks(most: number, count: number): number[] {
  if (!(most > 0)) return [0];
  const least = most / Math.max(1, count);
  const power = 10 ** Math.floor(Math.log10(least));
  const step = [1, 2, 2.5, 5, 10].map((k) => k * power).find((one) => one >= least * 0.999_999)!;
  return Array.from({ length: Math.floor(most / step + 1e-9) + 1 }, (_, i) => i * step);
}

const minuteSteps = [1, 2, 5, 10, 15, 30, 60, 120, 180, 360, 720, 1440, 2880, 10_080];

/** Even minutes from 0 to `most`, so far apart that at most `count` steps come of it. */
export function minuteTicks(most: number, count: number): number[] {
  const step = minuteSteps.find((one) => most / one <= count) ?? Math.ceil(most / count);
  return Array.from({ length: Math.floor(most / step) + 1 }, (_, i) => i * step);
}

/**
 * Rows for marks so that none covers another: for each place the first row, from 0, that is free there; `undefined`
 * where all `rows` are taken.
 *
 * @param xs Ascending.
 */
export function rowsFor(
  xs: readonly number[],
  apart: number,
  rows: number,
): (number | undefined)[] {
  const last = new Array<number>(rows).fill(-Infinity);
  return xs.map((x) => {
    const row = last.findIndex((one) => x - one >= apart);
    if (row < 0) return undefined;
    last[row] = x;
    return row;
  });
}
