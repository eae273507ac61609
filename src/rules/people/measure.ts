// Every limit looks back from one turn over those before it. A breach belongs to the turn that breaks the limit when it
// is worked, so no cause is reported twice and dropping that turn always ends the breach.
import {
  HOUR,
  lengthMinutes,
  localTimeOf,
  minuteOfClock,
  minutesBetween,
  startOfLocalDay,
  weekdayOf,
  type Interval,
} from '../../calendar/index.js';
import { weekdays, type Limit, type LimitKind, type LimitOf } from '../../model/index.js';
import { daysBefore } from './local-days.js';
import { averageDay } from './averages.js';
import type { Turn } from './turn.js';

/** What a limit allows and what was found, in the same unit. Broken when `excess` > 0. */
export interface Measure {
  readonly allowed: number;
  readonly found: number;
  readonly unit: 'minutes' | 'turns' | 'nights' | 'days' | 'minutes a day' | 'minutes a week';
  /** How far the limit is exceeded, in `unit`; above 0. */
  readonly excess: number;
  /** The interval that was measured. */
  readonly over: Interval;
  /** For an average: minutes to remove from the period. */
  readonly shedMinutes?: number;
}

/** Turns of one crew in time order, the index of the measured one, and the zone for days and nights. */
export interface MeasureContext {
  readonly turns: readonly Turn[];
  readonly at: number;
  readonly zone: string;
}

type Rule<K extends LimitKind> = (limit: LimitOf<K>, look: MeasureContext) => Measure | undefined;

const exceeds = (
  found: number,
  allowed: number,
  unit: Measure['unit'],
  over: Interval,
): Measure | undefined =>
  found > allowed ? { allowed, found, unit, excess: found - allowed, over } : undefined;

const fallsShort = (found: number, allowed: number, over: Interval): Measure | undefined =>
  found < allowed ? { allowed, found, unit: 'minutes', excess: allowed - found, over } : undefined;

/** Minutes of duty within an interval; `turns` may overlap its edges. */
function dutyIn(turns: readonly Turn[], upTo: number, over: Interval): number {
  let sum = 0;
  for (let i = upTo; i >= 0; i -= 1) {
    const { start, end } = turns[i]!.duty;
    if (end <= over.start) break;
    sum += Math.max(0, minutesBetween(Math.max(start, over.start), Math.min(end, over.end)));
  }
  return sum;
}

const longestTurn: Rule<'longest-turn'> = (limit, { turns, at, zone }) => {
  const turn = turns[at]!;
  if (limit.on === 'night' && turn.night === undefined) return undefined;
  if (limit.on === 'early') {
    const { hour, minute } = localTimeOf(turn.duty.start, zone);
    if (hour * 60 + minute >= minuteOfClock(limit.startsBefore)) return undefined;
  }
  return exceeds(lengthMinutes(turn.duty), limit.minutes, 'minutes', turn.duty);
};

const restBetween: Rule<'rest-between-turns'> = (limit, { turns, at, zone }) => {
  const turn = turns[at]!;
  const before = turns[at - 1];
  if (!before) return undefined;
  if (limit.on === 'between nights' && (turn.night === undefined || before.night === undefined))
    return undefined;
  const rest = minutesBetween(before.duty.end, turn.duty.start);
  const over = {
    start: Math.min(before.duty.end, turn.duty.start),
    end: Math.max(before.duty.end, turn.duty.start),
  };
  if (limit.shorterOnce !== undefined && rest < limit.minutes) {
    const weekAgo = daysBefore(turn.duty.start, 7, zone);
    const used = turns
      .slice(1, at)
      .some(
        (item, i) =>
          item.duty.start > weekAgo &&
          minutesBetween(turns[i]!.duty.end, item.duty.start) < limit.minutes,
      );
    return fallsShort(rest, used ? limit.minutes : limit.shorterOnce, over);
  }
  return fallsShort(rest, limit.minutes, over);
};

const restInPeriod: Rule<'rest-in-period'> = (limit, { turns, at, zone }) => {
  const { end, start } = turns[at]!.duty;
  const over = { start: daysBefore(end, limit.days, zone), end };
  let until = start;
  let longest = 0;
  for (let i = at - 1; i >= -1; i -= 1) {
    // No work is known before the first turn, so the time before it counts as rest.
    const from = Math.max(over.start, turns[i]?.duty.end ?? over.start);
    longest = Math.max(longest, minutesBetween(from, until));
    until = Math.min(until, turns[i]?.duty.start ?? until);
    if (from === over.start) break;
  }
  return fallsShort(longest, limit.minutes, over);
};

const hoursInSevenDays: Rule<'hours-in-seven-days'> = (limit, { turns, at, zone }) => {
  const { end } = turns[at]!.duty;
  let start = daysBefore(end, 7, zone);
  if (limit.week === 'calendar') {
    const first = weekdays.indexOf(limit.weekStarts) + 1;
    start = startOfLocalDay(end - 1, zone, -((weekdayOf(end - 1, zone) - first + 7) % 7));
  }
  const over = { start, end };
  const found = dutyIn(turns, at, over);
  const broken = exceeds(found, limit.minutes, 'minutes', over);
  if (broken || limit.week === 'rolling') return broken;
  // A turn that spans two weeks may also break the limit in the week in which it starts.
  const turnStart = turns[at]!.duty.start;
  if (turnStart >= start) return undefined;
  const earlier = { start: startOfLocalDay(start, zone, -7), end: start };
  return exceeds(dutyIn(turns, at, earlier), limit.minutes, 'minutes', earlier);
};

const turnsInFourteenDays: Rule<'turns-in-fourteen-days'> = (limit, { turns, at, zone }) => {
  const last = turns[at]!;
  const found = turns
    .slice(0, at + 1)
    .filter((turn) => turn.day > last.day - 14 && turn.day <= last.day).length;
  const over = { start: startOfLocalDay(last.duty.start, zone, -13), end: last.duty.end };
  return exceeds(found, limit.turns, 'turns', over);
};

/** Length of the run of consecutive numbers that ends at `last`. */
function runEndingAt(last: number, numbers: ReadonlySet<number>): number {
  let run = 0;
  while (numbers.has(last - run)) run += 1;
  return run;
}

const nightsInARow: Rule<'nights-in-a-row'> = (limit, { turns, at, zone }) => {
  const last = turns[at]!;
  if (last.night === undefined) return undefined;
  const worked = new Set(turns.slice(0, at + 1).flatMap((turn) => turn.night ?? []));
  const run = runEndingAt(last.night, worked);
  const over = { start: startOfLocalDay(last.duty.start, zone, -run), end: last.duty.end };
  return exceeds(run, limit.nights, 'nights', over);
};

const daysInARow: Rule<'days-in-a-row'> = (limit, { turns, at, zone }) => {
  const last = turns[at]!;
  const run = runEndingAt(last.day, new Set(turns.slice(0, at + 1).map((turn) => turn.day)));
  const over = { start: startOfLocalDay(last.duty.start, zone, 1 - run), end: last.duty.end };
  return exceeds(run, limit.days, 'days', over);
};

/** The reference period that ends with a turn; `undefined` when the roster is too short up to this turn and has later turns. */
function referencePeriod(days: number, { turns, at, zone }: MeasureContext) {
  const last = turns[at]!;
  const spanned = last.day - turns[0]!.day + 1;
  if (spanned >= days)
    return { days, over: { start: daysBefore(last.duty.end, days, zone), end: last.duty.end } };
  // A roster shorter than the period is averaged over its own length in whole weeks, once, at its last turn.
  if (at < turns.length - 1) return undefined;
  return {
    days: Math.ceil(spanned / 7) * 7,
    over: { start: turns[0]!.duty.start, end: last.duty.end },
  };
}

const nightAverage: Rule<'night-average'> = (limit, context) => {
  const period = referencePeriod(limit.days, context);
  if (!period) return undefined;
  const inIt = context.turns
    .slice(0, context.at + 1)
    .filter((turn) => turn.duty.end > period.over.start);
  if (inIt.filter((turn) => turn.night !== undefined).length < limit.nightShare * inIt.length)
    return undefined;
  const workedMinutes = dutyIn(context.turns, context.at, period.over);
  const average = averageDay({
    workedMinutes,
    days: period.days,
    weeklyRestHours: limit.weeklyRestHours,
  });
  // Compares minutes worked with minutes allowed, so that exactly eight hours pass.
  const shedMinutes = workedMinutes - limit.minutes * average.daysCounted;
  if (shedMinutes <= 1e-6) return undefined;
  return {
    allowed: limit.minutes,
    found: average.minutesADay,
    unit: 'minutes a day',
    excess: average.minutesADay - limit.minutes,
    over: period.over,
    shedMinutes: Math.ceil(shedMinutes - 1e-6),
  };
};

const weekAverage: Rule<'week-average'> = (limit, context) => {
  const period = referencePeriod(limit.days, context);
  if (!period) return undefined;
  const worked = dutyIn(context.turns, context.at, period.over);
  const weeks = period.days / 7;
  const shedMinutes = worked - limit.minutes * weeks;
  if (shedMinutes <= 1e-6) return undefined;
  return {
    allowed: limit.minutes,
    found: worked / weeks,
    unit: 'minutes a week',
    excess: worked / weeks - limit.minutes,
    over: period.over,
    shedMinutes: Math.ceil(shedMinutes - 1e-6),
  };
};

const nightHazard: Rule<'night-hazard'> = (limit, { turns, at }) => {
  const turn = turns[at]!;
  const { end } = turn.duty;
  const over = { start: end - 24 * HOUR, end };
  const nightIn = turns
    .slice(0, at + 1)
    .some((item) => item.night !== undefined && item.duty.end > over.start);
  return nightIn ? exceeds(dutyIn(turns, at, over), limit.minutes, 'minutes', over) : undefined;
};

const rules: { readonly [K in LimitKind]: Rule<K> } = {
  'longest-turn': longestTurn,
  'rest-between-turns': restBetween,
  'rest-in-period': restInPeriod,
  'hours-in-seven-days': hoursInSevenDays,
  'turns-in-fourteen-days': turnsInFourteenDays,
  'nights-in-a-row': nightsInARow,
  'days-in-a-row': daysInARow,
  'night-average': nightAverage,
  'night-hazard': nightHazard,
  'week-average': weekAverage,
};

/** How a turn breaks a limit; `undefined` when it does not. */
export function measure(limit: Limit, context: MeasureContext): Measure | undefined {
  return (rules[limit.limit] as (limit: Limit, context: MeasureContext) => Measure | undefined)(
    limit,
    context,
  );
}
