import {
  addMinutes,
  dayAt,
  dayText,
  localTimeOf,
  minuteOfClock,
  startOfLocalDay,
  weekdayOf,
  type Instant,
} from '../calendar/index.js';
import { weekdays } from '../model/index.js';
import type { PayFactor, StandingRule } from '../model/price-book.js';
import { Big } from 'big.js';

/** A half-open run of minutes, counted from a common start, with one pay factor. */
export interface FactorRun {
  readonly fromMinute: number;
  readonly toMinute: number;
  /** Decimal text. */
  readonly factor: string;
  /** Names of the bands that apply; empty at the ordinary rate. */
  readonly names: readonly string[];
}

/** The minutes of each run, as a sentence takes them. */
export const paidBy = (runs: readonly FactorRun[]) =>
  runs.map(({ fromMinute, toMinute, factor, names }) => ({
    minutes: toMinute - fromMinute,
    factor,
    names,
  }));

/**
 * Whether a factor applies to the minute that begins at `at`, by local clock time. On the night clocks go back, 01:30
 * occurs twice; both are in a band that includes 01:30, and both are paid.
 */
function holds(
  factor: PayFactor,
  at: Instant,
  zone: string,
  holidays: ReadonlySet<string>,
): boolean {
  const { hour, minute } = localTimeOf(at, zone);
  const now = hour * 60 + minute;
  const from = minuteOfClock(factor.from ?? '00:00');
  const to = minuteOfClock(factor.to ?? '24:00');
  const wraps = to <= from;
  const sinceYesterday = wraps && now < to;
  if (!(sinceYesterday || (now >= from && (wraps || now < to)))) return false;
  const started = sinceYesterday ? startOfLocalDay(at, zone, -1) : at;
  const weekday = weekdays[weekdayOf(started, zone) - 1]!;
  if (factor.days && !factor.days.includes(weekday)) return false;
  return !factor.holidaysOnly || holidays.has(dayText(dayAt(started, zone)));
}

/**
 * The pay factor of each minute of [start, start + minutes), as consecutive runs without gaps. Elapsed minutes: an hour
 * shown twice counts twice, a skipped hour not at all.
 */
export function factorRuns(
  start: Instant,
  minutes: number,
  zone: string,
  rule: Pick<StandingRule, 'factors' | 'combine'>,
  labour: boolean,
  holidays: readonly string[],
): readonly FactorRun[] {
  const bands = rule.factors.filter((f) => f.on === 'all' || (f.on === 'labour') === labour);
  if (bands.length === 0 || minutes === 0)
    return minutes === 0 ? [] : [{ fromMinute: 0, toMinute: minutes, factor: '1', names: [] }];
  const days = new Set(holidays);
  const runs: { fromMinute: number; toMinute: number; factor: string; names: string[] }[] = [];
  let key: string | undefined;
  for (let m = 0; m < minutes; m += 1) {
    const on = bands.filter((band) => holds(band, addMinutes(start, m), zone, days));
    const { factor, names } = combined(on, rule.combine);
    const now = [factor, ...names].join('\n');
    if (now === key) runs.at(-1)!.toMinute = m + 1;
    else runs.push({ fromMinute: m, toMinute: m + 1, factor, names });
    key = now;
  }
  return runs;
}

function combined(
  on: readonly PayFactor[],
  combine: StandingRule['combine'],
): { factor: string; names: string[] } {
  if (on.length === 0) return { factor: '1', names: [] };
  if (combine === 'multiply')
    return {
      factor: on.reduce((product, band) => product.times(band.factor), new Big(1)).toFixed(),
      names: on.map((band) => band.name),
    };
  const best = on.reduce((a, b) => (new Big(b.factor).gt(a.factor) ? b : a));
  return { factor: best.factor, names: [best.name] };
}
