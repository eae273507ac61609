import { MINUTE, type Instant, type Interval } from '../../calendar/index.js';
import { problemsOf, type Fault, type WeatherRow } from '../../model/index.js';
import type { WeatherProblems } from '../site-problems.js';

const problemOf = problemsOf<WeatherProblems>();

/** A row and the interval in which it applies. */
export interface Weather extends Interval {
  readonly row: WeatherRow;
}

/**
 * Rows as intervals, each until the next row and the last until `until`, and faults for rows that cannot be used.
 *
 * Rows must be in time order. A row that is out of order, at the same time as the one before it, or with an impossible
 * figure is left out with a fault, and the row before it continues.
 */
export function weatherOf(
  rows: readonly WeatherRow[],
  until: Instant,
): { readonly weather: readonly Weather[]; readonly faults: readonly Fault[] } {
  const faults: Fault[] = [];
  const used: WeatherRow[] = [];
  rows.forEach((row, index) => {
    const wrong = wrongIn(row, used.at(-1));
    if (wrong) faults.push(faultOf(index, ...wrong));
    else used.push(row);
  });
  const weather = used.flatMap((row, i) => {
    const end = Math.min(used[i + 1]?.at ?? until, until);
    return end > row.at ? [{ start: row.at, end, row }] : [];
  });
  return { weather, faults };
}

type Wrong = keyof WeatherProblems;

function wrongIn(
  row: WeatherRow,
  before: WeatherRow | undefined,
): readonly [wrong: Wrong, column: string, figure?: number | undefined] | undefined {
  if (!Number.isFinite(row.at)) return ['bad-time', 'time'];
  if (before && row.at <= before.at) return ['time-out-of-order', 'time'];
  const outside = (value: number | undefined, low: number, high: number): boolean =>
    value !== undefined && !(value >= low && value <= high);
  if (outside(row.windMps, 0, 120)) return ['bad-wind', 'wind', row.windMps];
  if (outside(row.gustMps, 0, 150)) return ['bad-wind/gust', 'gust', row.gustMps];
  if (outside(row.temperatureC, -70, 110))
    return ['bad-temperature', 'temperature', row.temperatureC];
  return undefined;
}

const faultOf = (row: number, wrong: Wrong, column: string, figure: number | undefined): Fault => ({
  ...problemOf(wrong, { row: row + 1, figure: figure ?? 0 }),
  severity: 'error',
  file: 'weather',
  row,
  column,
});

/** Rows at equal time steps, for a table of values only. */
export function evenRows(
  start: Instant,
  stepMinutes: number,
  values: readonly Omit<WeatherRow, 'at'>[],
): readonly WeatherRow[] {
  return values.map((value, i) => ({ ...value, at: start + i * stepMinutes * MINUTE }));
}
