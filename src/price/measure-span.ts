import {
  clockChanges,
  dayAt,
  dayText,
  intersect,
  interval,
  lengthMinutes,
  startOfLocalDay,
  totalMinutes,
  unionOf,
  type Interval,
} from '../calendar/index.js';
import type { Sentence } from '../model/index.js';
import type { LengthThreshold, NoticeBand } from '../model/price-book.js';
import { sayPrice } from './say-price.js';

/** "More than so many hours", with or without hours on a public holiday. */
export type HoursRule = Pick<LengthThreshold, 'moreThanHours' | 'publicHolidays'>;

/** An interval measured against an hours rule. Minutes are elapsed minutes. */
export interface SpanMeasure {
  readonly elapsedMinutes: number;
  /** Minutes on public holidays, by the local calendar. */
  readonly holidayMinutes: number;
  /** Minutes compared with the rule. */
  readonly countedMinutes: number;
  /** Minutes by which clocks went forward during it (negative: back). Subtracting wall-clock times overstates it by this. */
  readonly clocksForwardMinutes: number;
  /** Strictly more than the rule's hours. */
  readonly exceeded: boolean;
  /** Counted minutes above the rule; 0 or negative at or below it. */
  readonly overByMinutes: number;
  /** Whether subtracting wall-clock times would have given the opposite answer. */
  readonly clockChangeDecides: boolean;
  readonly sentence: Sentence;
}

/**
 * Measures an interval against an hours rule.
 *
 * @param holidays Local dates of public holidays, `2027-08-30`; each is the whole local day.
 * @throws {RangeError} When the interval ends before it starts.
 */
export function measureSpan(
  span: Interval,
  zone: string,
  rule: HoursRule,
  holidays: readonly string[] = [],
): SpanMeasure {
  const { start, end } = interval(span.start, span.end);
  const elapsedMinutes = lengthMinutes({ start, end });
  const holidayMinutes = holidays.length === 0 ? 0 : onHolidays({ start, end }, zone, holidays);
  const countedMinutes =
    rule.publicHolidays === 'counted' ? elapsedMinutes : elapsedMinutes - holidayMinutes;
  const changes = clockChanges(start, end, zone);
  const forward = (some: typeof changes): number =>
    some.reduce((sum, change) => sum + change.forwardMinutes, 0);
  const clocksForwardMinutes = forward(changes);
  // A clock change on an excluded holiday does not matter: the whole day is excluded either way.
  const misleading = changes.filter(
    (change) =>
      rule.publicHolidays === 'counted' || !holidays.includes(dayText(dayAt(change.at, zone))),
  );
  const limit = rule.moreThanHours * 60;
  const exceeded = countedMinutes > limit;
  const clockChangeDecides = exceeded !== countedMinutes + forward(misleading) > limit;
  return {
    elapsedMinutes,
    holidayMinutes,
    countedMinutes,
    clocksForwardMinutes,
    exceeded,
    overByMinutes: countedMinutes - limit,
    clockChangeDecides,
    sentence: sayPrice('length-measured', {
      elapsed: elapsedMinutes,
      holiday: elapsedMinutes - countedMinutes,
      exceeded,
      limit: rule.moreThanHours,
      clocks: clocksForwardMinutes,
      decides: clockChangeDecides,
    }),
  };
}

function onHolidays(span: Interval, zone: string, holidays: readonly string[]): number {
  const dates = new Set(holidays);
  const days: Interval[] = [];
  for (let day = startOfLocalDay(span.start, zone); day < span.end;) {
    const next = startOfLocalDay(day, zone, 1);
    if (dates.has(dayText(dayAt(day, zone)))) days.push({ start: day, end: next });
    day = next;
  }
  return totalMinutes(intersect(unionOf(days), [span]));
}

/** Measures a closure against each length threshold of the book. */
export function lengthThresholds(
  span: Interval,
  zone: string,
  thresholds: readonly LengthThreshold[],
  holidays: readonly string[] = [],
): readonly { readonly threshold: LengthThreshold; readonly measure: SpanMeasure }[] {
  return thresholds.map((threshold) => ({
    threshold,
    measure: measureSpan(span, zone, threshold, holidays),
  }));
}

/**
 * The notice band for notice given at `span.start` of a closure that starts at `span.end`: of the bands met, the one
 * with the most hours. `band` is undefined when none is met.
 */
export function noticeGiven(
  span: Interval,
  zone: string,
  bands: readonly NoticeBand[],
  holidays: readonly string[] = [],
): { readonly band?: NoticeBand; readonly measures: readonly SpanMeasure[] } {
  const measures = bands.map((band) => measureSpan(span, zone, band, holidays));
  const met = bands
    .filter((_, i) => measures[i]!.exceeded)
    .sort((a, b) => b.moreThanHours - a.moreThanHours)[0];
  return met ? { band: met, measures } : { measures };
}
