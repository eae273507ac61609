// The only place that asks luxon what a wall clock shows. luxon resolves a doubtful local time by today's date and
// moves a skipped one silently, so here offsets are asked for and every reading is checked by converting it back.
import { DateTime, IANAZone } from 'luxon';
import { HOUR, MINUTE, type Instant } from './instant.js';

/** What a wall clock shows, to the minute. `hour` is 0-23. It names no zone. */
export interface LocalTime {
  readonly year: number;
  /** 1-12. */
  readonly month: number;
  readonly day: number;
  readonly hour: number;
  readonly minute: number;
}

/** The moments at which clocks in a zone show a local time. */
export type Reading =
  | { readonly kind: 'one'; readonly at: Instant }
  /** Clocks went back: the time is shown twice. */
  | { readonly kind: 'two'; readonly earlier: Instant; readonly later: Instant }
  /** Clocks went forward over it: the time is never shown. `gap` is the moment of the change. */
  | { readonly kind: 'none'; readonly gap: Instant };

/** What to do with a local time that is shown twice (`earlier`, `later`) or never (`reject` refuses both). */
export type Disambiguation = 'earlier' | 'later' | 'reject';

const zones = new Map<string, IANAZone>();

/** @throws {RangeError} When the zone is not an IANA zone known here. */
function zoneOf(zone: string): IANAZone {
  let known = zones.get(zone);
  if (!known) {
    known = IANAZone.create(zone);
    if (!known.isValid) throw new RangeError(`unknown time zone "${zone}"`);
    zones.set(zone, known);
  }
  return known;
}

/** Whether `zone` is an IANA zone that can be used, such as `Europe/London`. */
export function isZone(zone: string): boolean {
  return zones.has(zone) || (zone.length > 0 && IANAZone.isValidZone(zone));
}

// A cache, as the same days are asked for again and again. No zone changes clocks twice in four days: where a block of
// four days begins and ends with the same offset, that offset holds in all of it. In other blocks there is an entry for
// each quarter hour, since clocks change on a quarter hour.
interface Offsets {
  readonly blocks: Map<number, number | undefined>;
  readonly quarters: Map<number, number>;
}
const offsetCache = new Map<string, Offsets>();
const QUARTER = 15 * MINUTE;
const BLOCK = 96 * HOUR;

/** Minutes by which local clocks are ahead of UTC at a moment. */
export function offsetMinutes(at: Instant, zone: string): number {
  let kept = offsetCache.get(zone);
  if (!kept)
    offsetCache.set(
      zone,
      (kept = {
        blocks: new Map<number, number | undefined>(),
        quarters: new Map<number, number>(),
      }),
    );
  const block = Math.floor(at / BLOCK);
  let steady = kept.blocks.get(block);
  if (steady === undefined && !kept.blocks.has(block)) {
    const first = offsetInQuarter(kept, block * BLOCK, zone);
    steady = first === offsetInQuarter(kept, (block + 1) * BLOCK, zone) ? first : undefined;
    if (kept.blocks.size > 100_000) kept.blocks.clear();
    kept.blocks.set(block, steady);
  }
  return steady ?? offsetInQuarter(kept, at, zone);
}

function offsetInQuarter({ quarters }: Offsets, at: Instant, zone: string): number {
  const key = Math.floor(at / QUARTER);
  let offset = quarters.get(key);
  if (offset === undefined) {
    offset = zoneOf(zone).offset(key * QUARTER);
    if (quarters.size > 200_000) quarters.clear();
    quarters.set(key, offset);
  }
  return offset;
}

const utcOf = (t: LocalTime): number => {
  // `Date.UTC` reads the years 0 to 99 as 1900 to 1999.
  if (t.year >= 100) return Date.UTC(t.year, t.month - 1, t.day, t.hour, t.minute);
  const at = new Date(0);
  at.setUTCFullYear(t.year, t.month - 1, t.day);
  at.setUTCHours(t.hour, t.minute);
  return at.getTime();
};

const isWithin = (n: number, least: number, most: number): boolean =>
  Number.isInteger(n) && n >= least && n <= most;

/** Whether the numbers name a day of the calendar and a minute of it (31 February does not). */
export function isLocalTime(t: LocalTime): boolean {
  // The quick answer for a day that every month has.
  if (isWithin(t.month, 1, 12) && isWithin(t.day, 1, 28) && isWithin(t.year, 0, 9999))
    return isWithin(t.hour, 0, 23) && isWithin(t.minute, 0, 59);
  const back = new Date(utcOf(t));
  return (
    back.getUTCFullYear() === t.year &&
    back.getUTCMonth() + 1 === t.month &&
    back.getUTCDate() === t.day &&
    back.getUTCHours() === t.hour &&
    back.getUTCMinutes() === t.minute
  );
}

/**
 * Every moment at which clocks in `zone` show `local`.
 *
 * @throws {RangeError} When the zone is unknown or the numbers are no calendar date.
 * @example readings({ year: 2026, month: 3, day: 29, hour: 1, minute: 30 }, 'Europe/London').kind // 'none'
 */
export function readings(local: LocalTime, zone: string): Reading {
  if (!isLocalTime(local)) throw new RangeError(`no such date or time: ${JSON.stringify(local)}`);
  const asUtc = utcOf(local);
  // No zone is more than a day from UTC, so the offsets in force a day either side are all that can apply.
  const before = offsetMinutes(asUtc - 24 * HOUR, zone);
  const after = offsetMinutes(asUtc + 24 * HOUR, zone);
  const steady = asUtc - before * MINUTE;
  if (before === after && offsetMinutes(steady, zone) === before)
    return { kind: 'one', at: steady };
  const found = [...new Set([before, after])]
    .map((offset) => asUtc - offset * MINUTE)
    .filter((at) => at + offsetMinutes(at, zone) * MINUTE === asUtc)
    .sort((a, b) => a - b);
  const [first, second] = found;
  if (first === undefined)
    return {
      kind: 'none',
      gap: changeAfter(asUtc - after * MINUTE - 1, asUtc - before * MINUTE + 1, zone),
    };
  return second === undefined
    ? { kind: 'one', at: first }
    : { kind: 'two', earlier: first, later: second };
}

/** The first moment in (from, to] at which the offset differs from that at `from`; `to` when there is none. */
function changeAfter(from: Instant, to: Instant, zone: string): Instant {
  const offset = offsetMinutes(from, zone);
  let low = Math.floor(from / MINUTE);
  let high = Math.ceil(to / MINUTE);
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (offsetMinutes(middle * MINUTE, zone) === offset) low = middle;
    else high = middle;
  }
  return high * MINUTE;
}

/** The clock changes in a stretch: when, and the minutes by which clocks went forward (negative: back). */
export function clockChanges(
  from: Instant,
  to: Instant,
  zone: string,
): { at: Instant; forwardMinutes: number }[] {
  const changes: { at: Instant; forwardMinutes: number }[] = [];
  // No zone changes twice within twelve hours.
  for (let at = from; at < to; at += 12 * HOUR) {
    const end = Math.min(to, at + 12 * HOUR);
    const forwardMinutes = offsetMinutes(end, zone) - offsetMinutes(at, zone);
    if (forwardMinutes !== 0) changes.push({ at: changeAfter(at, end, zone), forwardMinutes });
  }
  return changes;
}

/**
 * The moment of a local time, with a stated policy for the clock-change hours.
 *
 * `earlier` and `later` choose among two readings; a time that does not exist is refused under every policy.
 * @throws {RangeError} When the time does not exist, or happens twice under `reject`.
 */
export function instantOf(local: LocalTime, zone: string, policy: Disambiguation): Instant {
  const reading = readings(local, zone);
  if (reading.kind === 'one') return reading.at;
  if (reading.kind === 'two' && policy !== 'reject')
    return policy === 'earlier' ? reading.earlier : reading.later;
  const what = reading.kind === 'none' ? 'does not exist' : 'happens twice';
  throw new RangeError(`${localText(local)} ${what} in ${zone}: clocks change that night`);
}

/** What clocks in `zone` show at a moment. */
export function localTimeOf(at: Instant, zone: string): LocalTime {
  const shifted = new Date(at + offsetMinutes(at, zone) * MINUTE);
  return {
    year: shifted.getUTCFullYear(),
    month: shifted.getUTCMonth() + 1,
    day: shifted.getUTCDate(),
    hour: shifted.getUTCHours(),
    minute: shifted.getUTCMinutes(),
  };
}

/** 1 Monday to 7 Sunday, as ISO 8601 numbers them, of the local day at a moment. */
export function weekdayOf(at: Instant, zone: string): number {
  const shifted = new Date(at + offsetMinutes(at, zone) * MINUTE);
  return shifted.getUTCDay() || 7;
}

/**
 * The first moment of the local day `days` after the one that holds `at`.
 * Where a zone skips midnight, the first minute that exists.
 */
export function startOfLocalDay(at: Instant, zone: string, days = 0): Instant {
  const { year, month, day } = localTimeOf(at, zone);
  const wanted = localTimeOf(
    utcOf({ year, month, day, hour: 12, minute: 0 }) + days * 24 * HOUR,
    'UTC',
  );
  const reading = readings({ ...wanted, hour: 0, minute: 0 }, zone);
  if (reading.kind === 'none') return reading.gap;
  return reading.kind === 'one' ? reading.at : reading.earlier;
}

const two = (n: number): string => (n < 10 ? `0${n}` : `${n}`);

/** `2027-03-28 01:30`. */
export function localText(t: LocalTime): string {
  return `${String(t.year).padStart(4, '0')}-${two(t.month)}-${two(t.day)} ${two(t.hour)}:${two(t.minute)}`;
}

/** A moment as ISO 8601 with the zone's offset then in force, to the minute: `2027-03-28T03:00:00+01:00`. */
export function isoText(at: Instant, zone: string): string {
  const offset = offsetMinutes(at, zone);
  const sign = offset < 0 ? '-' : '+';
  const size = Math.abs(offset);
  const local = localTimeOf(at, zone);
  return `${localText(local).replace(' ', 'T')}:00${sign}${two(Math.floor(size / 60))}:${two(size % 60)}`;
}

/** The zone's short name at a moment in English, such as `BST`; an offset where it has none. */
export function zoneName(at: Instant, zone: string): string {
  return DateTime.fromMillis(at, { zone: zoneOf(zone), locale: 'en-GB' }).offsetNameShort ?? '';
}
