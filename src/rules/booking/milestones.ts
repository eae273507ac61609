import { minutesBetween, type Instant } from '../../calendar/index.js';
import type { AccessWindow, WindowStatus } from '../../model/index.js';
import type { Sourced } from '../people/index.js';
import type { Anchor, BookingRules, MilestoneRule } from './booking-rules.js';
import { anchorDay, dueBefore, type PeriodStart } from './due-date.js';

/**
 * `met`: recorded as done, or taken as done by the window's status. `due`: still to come. `late`: past and not met.
 * `missed at adding`: it was past when the window entered the plan, so it could not have been met. `not needed`: the
 * window is withdrawn.
 */
export type MilestoneState = 'met' | 'due' | 'late' | 'missed at adding' | 'not needed';

/** A booking date of a window and its state. `due`: epoch milliseconds. */
export interface Milestone extends Sourced {
  readonly window: string;
  readonly milestone: string;
  readonly by?: string;
  readonly due: Instant;
  /** Zone in which the due time is written. */
  readonly zone: string;
  readonly state: MilestoneState;
  /** Elapsed minutes from `now` to `due`; below 0 when it is past. */
  readonly minutesLeft: number;
  /** Minutes by which a milestone was met late. */
  readonly metLateByMinutes?: number;
  readonly before: Anchor;
  /** The window lies in two weeks, periods or timetables: the lead time is counted from the first. */
  readonly inTwo?: true;
}

export interface MilestoneOptions {
  /** For periods other than those of the railway year in Great Britain. */
  readonly periodStart?: PeriodStart;
  /** When the window entered the plan. */
  readonly addedAt?: Instant;
  /** When milestones of this window were met, by name. */
  readonly met?: ReadonlyMap<string, Instant>;
  /** Class of the restriction. Absent: milestones that name classes are left out. */
  readonly restriction?: string;
}

const howFar: Readonly<Record<WindowStatus, number>> = {
  withdrawn: -1,
  requested: 0,
  offered: 1,
  confirmed: 2,
};

/**
 * Every milestone of a window and its state at `now`, sorted by due time.
 *
 * Due times are local times of the window's zone: 22:00 stays 22:00 across a clock change.
 */
export function milestonesFor(
  window: AccessWindow,
  book: BookingRules,
  now: Instant,
  options: MilestoneOptions = {},
): readonly Milestone[] {
  const { restriction } = options;
  return book.milestones
    .filter((rule) => !rule.classes || (restriction && rule.classes.includes(restriction)))
    .map((rule) => milestoneOf(window, rule, book, now, options))
    .sort((a, b) => a.due - b.due);
}

function milestoneOf(
  window: AccessWindow,
  rule: MilestoneRule,
  book: BookingRules,
  now: Instant,
  options: MilestoneOptions,
): Milestone {
  const { zone } = window;
  const where = { zone, ...(options.periodStart && { periodStart: options.periodStart }) };
  const before = anchorOf(rule, book);
  const day = anchorDay(window.start, before, book, where);
  const due = dueBefore(day, rule, zone);
  const metAt = options.met?.get(rule.milestone);
  const inTwo = before !== 'window' && anchorDay(window.end - 1, before, book, where) !== day;
  return {
    window: window.id,
    milestone: rule.milestone,
    ...(rule.by !== undefined && { by: rule.by }),
    due,
    zone,
    state: stateOf(window, rule, due, now, { metAt, addedAt: options.addedAt }),
    minutesLeft: minutesBetween(now, due),
    ...(metAt !== undefined && metAt > due && { metLateByMinutes: minutesBetween(due, metAt) }),
    before,
    ...(inTwo && { inTwo }),
    source: rule.source,
    sureness: rule.sureness,
  };
}

/** Weeks are counted from the planning week if the rules say so; months and days never are. */
function anchorOf(rule: MilestoneRule, book: BookingRules): Anchor {
  const inWeeks = rule.before === 'window' && rule.weeks > 0;
  return inWeeks ? book.weeksFrom : rule.before;
}

function stateOf(
  window: AccessWindow,
  rule: MilestoneRule,
  due: Instant,
  now: Instant,
  known: { metAt: Instant | undefined; addedAt: Instant | undefined },
): MilestoneState {
  if (window.status === 'withdrawn') return 'not needed';
  // A date in the future is an intention, not a record.
  if (known.metAt !== undefined && known.metAt <= now) return 'met';
  if (rule.metWhen && howFar[window.status] >= howFar[rule.metWhen]) return 'met';
  if (known.addedAt !== undefined && due < known.addedAt) return 'missed at adding';
  return now > due ? 'late' : 'due';
}
