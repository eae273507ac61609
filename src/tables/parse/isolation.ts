import {
  contains,
  DAY,
  intersect,
  intersectionOf,
  localText,
  localTimeOf,
  unionOf,
  type DailyBand,
  type Instant,
  type Interval,
} from '../../calendar/index.js';
import type { IsolatedSection, Problem } from '../../model/index.js';
import { minuteOfDay, type ClockTime } from './clock.js';
import { partsOf } from './list.js';
import { candidatesAt, dayAfter, gapAt, shortestPair, twiceWarning } from './local-moment.js';
import { refuse, type Parsed, problemOf } from './parsed.js';
import { spanOf } from './span.js';
import { parseMoment, type DateOrder } from './written-moment.js';
const withTimes = /^([^[\]]{1,200})\[([^[\]]{1,200})\]$/;

/** What stands in one pair of brackets, and the stretches of the window that it comes to. */
interface Times {
  readonly said: Interval | DailyBand;
  readonly stretches: readonly Interval[];
}

/**
 * Reads the sections a window makes dead: `S1 [00:40-05:10]; S2`. Times are local in the window's zone. Dated ones must
 * lie inside the window. A time alone comes again each day of a window of more than 24 hours, cut to the window; in a
 * shorter one it is its first occurrence at or after the start, and must lie inside. A section may be named once for each
 * of its times, which must lie apart.
 */
export function parseIsolation(
  text: string,
  window: Interval,
  zone: string,
  order: DateOrder,
): Parsed<IsolatedSection[]> {
  const sections = new Map<string, Times[]>();
  let warning: Problem | undefined;
  for (const part of partsOf(text)) {
    const read = parsePart(part, window, zone, order);
    if ('problem' in read) return read;
    const { section, times } = read.value;
    const before = sections.get(section);
    const all = [...(before ?? []), ...(times ? [times] : [])];
    if (before && (!times || before.length === 0 || overlapping(all))) return twice(section);
    warning ??= read.warning;
    sections.set(section, all);
  }
  return {
    value: [...sections].map(([section, times]) => ({
      section,
      ...(times.length > 0 && { during: times.map((time) => time.said) }),
    })),
    ...(warning && { warning }),
  };
}

function twice(section: string): { problem: Problem } {
  return refuse('section-twice', { section });
}

/** Whether two entries of a section are dead at one moment. */
const overlapping = (times: readonly Times[]): boolean =>
  times.some((time, k) =>
    times
      .slice(k + 1)
      .some((other) => intersect(unionOf(time.stretches), unionOf(other.stretches)).length > 0),
  );

function parsePart(
  part: string,
  window: Interval,
  zone: string,
  order: DateOrder,
): Parsed<{ readonly section: string; readonly times?: Times }> {
  if (!/[[\]]/.test(part)) return { value: { section: part } };
  const found = withTimes.exec(part);
  const section = found?.[1]?.trim() ?? '';
  if (!found || section === '') return refuse('isolation-not-read/section', { part });
  const times = parseTimes(found[2]!, section, window, zone, order);
  return 'problem' in times ? times : { ...times, value: { section, times: times.value } };
}

function parseTimes(
  text: string,
  section: string,
  window: Interval,
  zone: string,
  order: DateOrder,
): Parsed<Times> {
  for (const [from, to] of halves(text)) {
    const start = parseMoment(from, order);
    const end = parseMoment(to, order);
    if ('problem' in start || 'problem' in end) continue;
    if (start.value.date) {
      const span = spanOf(start.value, end.value, zone);
      if ('problem' in span) return { problem: span.problem };
      const warning = span.value.startWarning ?? span.value.endWarning;
      const said = { start: span.value.start, end: span.value.end };
      if (!contains(window, said)) return outside(section, said, zone);
      return { value: { said, stretches: [said] }, ...(warning && { warning }) };
    }
    if (start.value.time && end.value.time && !end.value.date)
      return dailyTimes(start.value.time, end.value.time, section, window, zone);
  }
  return refuse('isolation-not-read/pair', { text });
}

function outside(section: string, { start, end }: Interval, zone: string): { problem: Problem } {
  return refuse('isolation-outside-window', {
    section,
    start: momentOf(start, zone),
    end: momentOf(end, zone),
  });
}

const momentOf = (at: Instant, zone: string): string => localText(localTimeOf(at, zone));

/** The ways to split at a dash: dates hold dashes too, so ` - ` is tried first. */
function* halves(text: string): Generator<readonly [string, string]> {
  for (const mark of [/ [-–] | to /i, /[-–]/]) {
    const found = mark.exec(text);
    if (found)
      yield [text.slice(0, found.index).trim(), text.slice(found.index + found[0].length).trim()];
  }
}

/** A time of day: each time it comes in a long window, the first in another. */
function dailyTimes(
  from: ClockTime,
  to: ClockTime,
  section: string,
  window: Interval,
  zone: string,
): Parsed<Times> {
  const said = { fromMinute: minuteOfDay(from), toMinute: minuteOfDay(to) };
  const long = window.end - window.start > DAY;
  if (long && said.fromMinute === said.toMinute)
    return refuse('isolation-not-read/round', { section });
  const stretches: Interval[] = [];
  let warning: Problem | undefined;
  const first = localTimeOf(window.start, zone);
  for (let days = -1; ; days += 1) {
    const day = dayAfter(first, days);
    const read = occurrence(day, from, to, window, zone);
    if ('problem' in read) return read;
    const { value: stretch } = read;
    if (!long && stretch.start >= window.start) {
      if (!contains(window, stretch)) return outside(section, stretch, zone);
      return {
        value: { said, stretches: [stretch] },
        ...(read.warning && { warning: read.warning }),
      };
    }
    if (stretch.start >= window.end) break;
    if (!long) continue;
    const inside = intersectionOf(stretch, window);
    if (!inside) continue;
    stretches.push(inside);
    warning ??=
      read.warning ?? (contains(window, stretch) ? undefined : cut(section, inside, zone));
  }
  if (stretches.length === 0) return refuse('isolation-not-read/none', { section });
  return { value: { said, stretches }, ...(warning && { warning }) };
}

function cut(section: string, { start, end }: Interval, zone: string): Problem {
  return problemOf('isolation-cut-to-window', {
    section,
    start: momentOf(start, zone),
    end: momentOf(end, zone),
  });
}

/**
 * A time of day as it comes on a local day, in the reading that gives the shorter stretch, which is empty where no
 * reading ends after it starts. A time that clocks skip is refused where that is inside the window.
 */
function occurrence(
  day: ReturnType<typeof dayAfter>,
  from: ClockTime,
  to: ClockTime,
  window: Interval,
  zone: string,
): Parsed<Interval> {
  const starts = edge(day, from, window, zone);
  if ('problem' in starts) return starts;
  const last = minuteOfDay(to) > minuteOfDay(from) ? day : dayAfter(day, 1);
  const ends = edge(last, to, window, zone);
  if ('problem' in ends) return ends;
  const pair = shortestPair(starts.value, ends.value) ?? {
    start: starts.value[0]!,
    end: starts.value[0]!,
  };
  const doubled = [[starts.value, pair.start] as const, [ends.value, pair.end] as const].find(
    ([all, taken]) => all.length > 1 && window.start <= taken && taken <= window.end,
  );
  const warning = doubled
    ? twiceWarning(doubled[0], doubled[1], zone, 'shorter-isolation')
    : (starts.warning ?? ends.warning);
  return { value: pair, ...(warning && { warning }) };
}

/** The readings of an edge; outside the window one that clocks skip is the moment of the change. */
function edge(
  day: ReturnType<typeof dayAfter>,
  time: ClockTime,
  window: Interval,
  zone: string,
): Parsed<readonly Instant[]> {
  const found = candidatesAt(day, time, zone);
  if ('value' in found) return found;
  const gap = gapAt(day, time, zone)!;
  return window.start < gap && gap < window.end ? found : { value: [gap] };
}
