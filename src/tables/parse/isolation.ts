import {
  contains,
  localText,
  localTimeOf,
  type Instant,
  type Interval,
} from '../../calendar/index.js';
import type { IsolatedSection } from '../../model/index.js';
import { minuteOfDay, type ClockTime } from './clock.js';
import { partsOf } from './list.js';
import { candidatesAt, dayAfter, shortestPair, twiceWarning } from './local-moment.js';
import { refuse, type Parsed, type Problem } from './parsed.js';
import { spanOf } from './span.js';
import { parseMoment, type DateOrder } from './written-moment.js';

const mend = 'Write S1, or S1 [00:40-05:10], with ; between several.';
const withTimes = /^([^[\]]{1,200})\[([^[\]]{1,200})\]$/;

/**
 * Reads the sections a window makes dead: `S1 [00:40-05:10]; S2`. Times are local in the window's zone; a time alone
 * is its first occurrence at or after the window's start. They must lie inside the window.
 */
export function parseIsolation(
  text: string,
  window: Interval,
  zone: string,
  order: DateOrder,
): Parsed<IsolatedSection[]> {
  const sections = new Map<string, IsolatedSection>();
  let warning: Problem | undefined;
  for (const part of partsOf(text)) {
    const read = parseSection(part, window, zone, order);
    if ('problem' in read) return read;
    const { section } = read.value;
    if (sections.has(section)) {
      return refuse(
        'section-twice',
        `Section "${section}" is named twice.`,
        'Name each section once.',
      );
    }
    warning ??= read.warning;
    sections.set(section, read.value);
  }
  return { value: [...sections.values()], ...(warning && { warning }) };
}

function parseSection(
  part: string,
  window: Interval,
  zone: string,
  order: DateOrder,
): Parsed<IsolatedSection> {
  if (!/[[\]]/.test(part)) return { value: { section: part } };
  const found = withTimes.exec(part);
  const section = found?.[1]?.trim() ?? '';
  if (!found || section === '')
    return refuse('isolation-not-read', `"${part}" is not a section with times.`, mend);
  const during = parseDuring(found[2]!, window, zone, order);
  if ('problem' in during) return during;
  if (!contains(window, during.value)) {
    const [from, to] = [during.value.start, during.value.end].map((at) =>
      localText(localTimeOf(at, zone)),
    );
    return refuse(
      'isolation-outside-window',
      `Section "${section}" from ${from} to ${to} is not wholly inside the window.`,
      'Give times inside the window.',
    );
  }
  return { ...during, value: { section, during: during.value } };
}

function parseDuring(
  text: string,
  window: Interval,
  zone: string,
  order: DateOrder,
): Parsed<Interval> {
  for (const [from, to] of halves(text)) {
    const start = parseMoment(from, order);
    const end = parseMoment(to, order);
    if ('problem' in start || 'problem' in end) continue;
    if (start.value.date) {
      const span = spanOf(start.value, end.value, zone);
      if ('problem' in span) return { problem: span.problem };
      const warning = span.value.startWarning ?? span.value.endWarning;
      return {
        value: { start: span.value.start, end: span.value.end },
        ...(warning && { warning }),
      };
    }
    if (start.value.time && end.value.time && !end.value.date) {
      return clockSpan(start.value.time, end.value.time, window, zone);
    }
  }
  return refuse('isolation-not-read', `"[${text}]" is not a pair of times.`, mend);
}

/** The ways to split at a dash: dates hold dashes too, so ` - ` is tried first. */
function* halves(text: string): Generator<readonly [string, string]> {
  for (const mark of [/ [-–] | to /i, /[-–]/]) {
    const found = mark.exec(text);
    if (found)
      yield [text.slice(0, found.index).trim(), text.slice(found.index + found[0].length).trim()];
  }
}

function clockSpan(
  from: ClockTime,
  to: ClockTime,
  window: Interval,
  zone: string,
): Parsed<Interval> {
  const starts = firstAtOrAfter(from, window.start, zone);
  if ('problem' in starts) return starts;
  const ends = firstAtOrAfter(to, starts.value[0]! + 1, zone);
  if ('problem' in ends) return ends;
  const pair = shortestPair(starts.value, ends.value);
  if (!pair) return refuse('end-not-after-start', 'The isolation ends before it starts.', mend);
  const value = { start: pair.start, end: pair.end };
  const twice = [[starts.value, pair.start] as const, [ends.value, pair.end] as const].find(
    ([all]) => all.length > 1,
  );
  const edge = starts.warning ?? ends.warning;
  if (!twice) return edge ? { value, warning: edge } : { value };
  return {
    value,
    warning: twiceWarning(twice[0], twice[1], zone, 'it gives the shorter isolation'),
  };
}

/** The readings of a time of day on the first local day on which one of them is at or after a moment. */
function firstAtOrAfter(time: ClockTime, at: Instant, zone: string): Parsed<readonly Instant[]> {
  const local = localTimeOf(at, zone);
  for (let days = 0; days <= 2; days += 1) {
    const found = candidatesAt(dayAfter(local, days), time, zone);
    if ('problem' in found) {
      // A time that clocks skipped before the moment asked about says nothing about the next day's.
      if (days === 0 && minuteOfDay(time) < minuteOfDay(local)) continue;
      return found;
    }
    const later = found.value.filter((one) => one >= at);
    if (later.length > 0) return { ...found, value: later };
  }
  throw new RangeError('a time of day occurs every day');
}
