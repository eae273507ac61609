import { dayAt, localTimeOf, momentOn, type Instant } from '../../calendar/index.js';
import type { AccessWindow, Placement } from '../../model/index.js';
import type { Milestone } from '../../rules/booking/index.js';
import type { LookAheadBasis } from './basis.js';
import { notReady, type NotReady } from './not-ready.js';
import { wantedOf, type Wanted } from './wanted.js';

/** What lies in the next so many weeks. */
export interface Span {
  readonly weeks: number;
  /** The same time by the clock of the plan so many weeks on. */
  readonly until: Instant;
  /** Windows open at some time of it; those withdrawn only where work is placed in them. */
  readonly windows: readonly {
    readonly window: AccessWindow;
    readonly work: readonly Placement[];
  }[];
  /** Outside work in it. */
  readonly outside: readonly Placement[];
  readonly wanted: readonly Wanted[];
  /** Booking dates that fall in it, and those of any window still to come that are late; by date. */
  readonly bookings: readonly Milestone[];
  readonly notReady: readonly NotReady[];
}

/** The weeks to come: windows, work, people and plant wanted, bookings due, what is not ready. Spans begin at `now`. */
export function lookAhead(basis: LookAheadBasis, weeks: readonly number[]): readonly Span[] {
  return weeks.map((count) => spanOf(basis, count));
}

function spanOf(basis: LookAheadBasis, weeks: number): Span {
  const { plan, allocation, milestones, now } = basis;
  const until = weeksOn(now, weeks, plan.zone);
  const inSpan = (item: { readonly from: Instant; readonly to: Instant }): boolean =>
    item.from < until && item.to > now;
  const placed = allocation.placements.filter(inSpan).toSorted((a, b) => a.from - b.from);
  const windows = plan.windows
    .filter(
      (window) => inSpan({ from: window.start, to: window.end }) && window.status !== 'withdrawn',
    )
    .toSorted((a, b) => a.start - b.start || a.end - b.end)
    .map((window) => ({
      window,
      work: placed.filter((placement) => placement.window === window.id),
    }));
  const ends = new Map(plan.windows.map((window) => [window.id, window.end]));
  const bookings = milestones
    .filter(
      (milestone) =>
        (milestone.state === 'due' && milestone.due >= now && milestone.due < until) ||
        (milestone.state === 'late' && (ends.get(milestone.window) ?? 0) > now),
    )
    .toSorted((a, b) => a.due - b.due);
  return {
    weeks,
    until,
    windows,
    outside: placed.filter((placement) => placement.window === null),
    wanted: wantedOf(plan, placed, { from: now, to: until }),
    bookings,
    notReady: notReady(basis, { windows, placed, from: now, until }),
  };
}

/** The same time by the clock of a zone, whole weeks later. */
export function weeksOn(at: Instant, weeks: number, zone: string): Instant {
  const { hour, minute } = localTimeOf(at, zone);
  return momentOn(dayAt(at, zone) + 7 * weeks, hour * 60 + minute, zone);
}
