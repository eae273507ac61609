import { MINUTE, type Instant, type Interval } from '../../calendar/index.js';
import type { Fault, WeatherRow } from '../../model/index.js';

/** A row with the stretch in which it holds. */
export interface Weather extends Interval {
  readonly row: WeatherRow;
}

/**
 * Rows as stretches of time, each until the next row and the last until `until`, and the rows that could not be used.
 *
 * Rows must come in time order. A row out of order, at the time of the one before it, or with a figure that no
 * weather has, is left out with a fault, and the row before it holds on.
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

function wrongIn(
  row: WeatherRow,
  before: WeatherRow | undefined,
): [code: string, column: string, message: string] | undefined {
  if (!Number.isFinite(row.at)) return ['bad-time', 'time', 'the time cannot be read.'];
  if (before && row.at <= before.at)
    return ['time-out-of-order', 'time', 'the time is not after that of the row before.'];
  const outside = (value: number | undefined, low: number, high: number): boolean =>
    value !== undefined && !(value >= low && value <= high);
  if (outside(row.windMps, 0, 120))
    return ['bad-wind', 'wind', `no wind blows at ${row.windMps} m/s.`];
  if (outside(row.gustMps, 0, 150))
    return ['bad-wind', 'gust', `no gust blows at ${row.gustMps} m/s.`];
  if (outside(row.temperatureC, -70, 110))
    return ['bad-temperature', 'temperature', `${row.temperatureC} °C is no such temperature.`];
  return undefined;
}

function faultOf(row: number, code: string, column: string, message: string): Fault {
  return {
    code,
    severity: 'error',
    file: 'weather',
    row,
    column,
    message: `Weather row ${row + 1}: ${message}`,
    mend: 'Correct the row; until then the row before it holds on.',
  };
}

/** Rows at equal steps, for a table that gives only values. */
export function evenRows(
  start: Instant,
  stepMinutes: number,
  values: readonly Omit<WeatherRow, 'at'>[],
): readonly WeatherRow[] {
  return values.map((value, i) => ({ ...value, at: start + i * stepMinutes * MINUTE }));
}
