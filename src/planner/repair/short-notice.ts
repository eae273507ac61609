import { minutesBetween, type Instant } from '../../calendar/index.js';
import type { Placement } from '../fit/index.js';
import type { AccessWindow, Plan } from '../../model/index.js';
import { withKept } from './pieces.js';
import { boundWith } from '../problem/left-open.js';
import { allocate, type AllocateOptions } from '../search/allocate.js';
import type { Allocation } from '../search/types.js';

/** What an offered window does for one key date. Minutes gained are negative when the date is worse served. */
export interface KeyDateGain {
  readonly package: string;
  readonly due: Instant;
  readonly before: Instant | null;
  readonly after: Instant | null;
  /** Null while the package is not all placed on both sides. */
  readonly gainedMinutes: number | null;
  readonly metBefore: boolean;
  readonly metAfter: boolean;
}

/** The best use of a window offered at short notice, and what it buys. */
export interface ShortNotice {
  readonly window: string;
  /** What is best done in the offered window; empty when nothing that is ready gains by it. */
  readonly use: readonly Placement[];
  readonly allocation: Allocation;
  readonly keyDates: readonly KeyDateGain[];
  /** Minutes by which everything is finished sooner; null while something is unplaced on either side. */
  readonly finishGainedMinutes: number | null;
}

export interface ShortNoticeOptions extends AllocateOptions {
  /** Nothing that is not planned already can begin before this moment: preparing takes notice. */
  readonly now?: Instant;
}

/**
 * The best use of one newly offered window, and what it buys at the key dates.
 *
 * What is planned to begin before the window (or before `now`) stays, and what is bound to one window with it, and what
 * `options.keep` names; what else comes after may be brought forward into it.
 * The window is added to the plan unless it is there already.
 */
export function shortNotice(
  plan: Plan,
  before: Allocation,
  window: AccessWindow,
  options: ShortNoticeOptions,
): ShortNotice {
  const from = Math.max(window.start, options.now ?? window.start);
  const begun = before.placements.filter((placement) => placement.from < from);
  const bound = boundWith(
    plan,
    begun.map((placement) => placement.activity),
  );
  const planned = before.placements.filter(
    (placement) =>
      placement.from < from || (placement.window !== null && bound.has(placement.activity)),
  );
  const settled = withKept(planned, options.keep ?? []);
  const done = new Set(settled.map((placement) => placement.activity));
  const { now } = options;
  const offered: Plan = {
    ...plan,
    windows: plan.windows.some((item) => item.id === window.id)
      ? plan.windows.map((item) => (item.id === window.id ? window : item))
      : [...plan.windows, window],
    activities: plan.activities.map((activity) =>
      now === undefined || done.has(activity.id)
        ? activity
        : { ...activity, notBefore: Math.max(now, activity.notBefore ?? now) },
    ),
  };
  const allocation = allocate(offered, { ...options, keep: settled });
  return {
    window: window.id,
    use: allocation.placements.filter((placement) => placement.window === window.id),
    allocation,
    keyDates: allocation.keyDates.map((after): KeyDateGain => {
      const was = before.keyDates.find(
        (date) => date.package === after.package && date.due === after.due,
      );
      const both = was?.forecast != null && after.forecast !== null;
      return {
        package: after.package,
        due: after.due,
        before: was?.forecast ?? null,
        after: after.forecast,
        gainedMinutes: both ? minutesBetween(after.forecast, was.forecast) : null,
        metBefore: was?.met ?? false,
        metAfter: after.met,
      };
    }),
    finishGainedMinutes: finishGain(before, allocation),
  };
}

function finishGain(before: Allocation, after: Allocation): number | null {
  if (before.unplaced.length > 0 || after.unplaced.length > 0) return null;
  if (before.finishesAt === null || after.finishesAt === null) return null;
  return minutesBetween(after.finishesAt, before.finishesAt);
}
