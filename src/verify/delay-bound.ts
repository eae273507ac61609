// A lower bound on when work can finish if something before it slips, by links and usable time only. Float that exceeds
// even this bound is wrong.
import { uncovered } from './bands.js';
import type { Due } from './dues.js';
import type { Ledgers } from './usable.js';
import { stopsOf } from './usable.js';
import { takes } from './where.js';
import { MINUTE, type Activity, type Instant, type Plan, type Stretch } from './plan-types.js';
import { endOf, startOf, type Job } from './work.js';

const DAY = 1440 * MINUTE;
/** How far to look past the earliest end of work outside windows, which no window limits. */
const OUTSIDE = 60 * DAY;

export class DelayBound {
  readonly #plan: Plan;
  readonly #jobs: ReadonlyMap<string, Job>;
  readonly #ledgers: Ledgers;
  readonly #followers = new Map<string, Job[]>();
  /** Limit of each finish: its key date, or the planned finish of work for that date if later. */
  readonly #limits = new Map<string, Instant>();

  constructor(plan: Plan, jobs: ReadonlyMap<string, Job>, ledgers: Ledgers, dues: readonly Due[]) {
    this.#plan = plan;
    this.#jobs = jobs;
    this.#ledgers = ledgers;
    for (const due of dues) {
      const placed = due.jobs.filter((job) => job.pieces.length > 0);
      const limit = Math.max(due.due, ...placed.map(endOf));
      for (const { activity } of placed) this.#limits.set(activity.id, limit);
    }
    for (const job of jobs.values())
      if (job.pieces.length > 0)
        for (const { activity } of job.activity.after) {
          const known = this.#followers.get(activity);
          if (known) known.push(job);
          else this.#followers.set(activity, [job]);
        }
  }

  /**
   * The first activity that finds no time, or misses a key date (by more than planned), if `id` cannot finish before
   * `finish`. `undefined` when there is none.
   */
  firstDelayed(id: string, finish: Instant): string | undefined {
    // The latest start constraint of each so far, and the earliest place found for it.
    const asked = new Map<string, { begin: Instant; over: Instant }>([
      [id, { begin: Number.NEGATIVE_INFINITY, over: finish }],
    ]);
    const soonest = new Map<string, Stretch>();
    const queue = new Set([id]);
    for (const next of queue) {
      queue.delete(next);
      const job = this.#jobs.get(next)!;
      const { begin, over } = asked.get(next)!;
      const fit = this.#soonest(job, begin, over);
      if (!fit) return next;
      if (fit.end > (this.#limits.get(next) ?? Number.POSITIVE_INFINITY)) return next;
      const before = soonest.get(next);
      if (before && fit.start <= before.start && fit.end <= before.end) continue;
      soonest.set(next, fit);
      for (const follower of this.#followers.get(next) ?? [])
        for (const link of follower.activity.after) {
          if (link.activity !== next) continue;
          const from = (link.from === 'start' ? fit.start : fit.end) + link.gapMinutes * MINUTE;
          const own = follower.activity.id;
          const known = asked.get(own)?.begin ?? startOf(follower);
          if (from <= known) continue;
          asked.set(own, { begin: from, over: Number.NEGATIVE_INFINITY });
          queue.add(own);
        }
    }
    return undefined;
  }

  /** The earliest place of a piece that begins at or after `begin`, ends at or after `over`, and is not earlier than planned. */
  #soonest(job: Job, begin: Instant, over: Instant): Stretch | undefined {
    const { work } = job.activity;
    const last = job.pieces.at(-1)!;
    const length =
      MINUTE *
      (work.kind === 'whole'
        ? work.minutes
        : work.setUpMinutes + work.minutesPerUnit + work.makeSafeMinutes);
    // Of repeated work, only the last unit is considered: the rest may stay in place.
    const floor = work.kind === 'whole' ? Math.max(begin, last.from) : begin;
    const after = Math.max(over, endOf(job));
    let best: Stretch | undefined;
    const until = Math.max(after, floor + length);
    for (const { start, end } of this.#openTo(job.activity, last.from, until)) {
      const to = Math.max(until, start + length);
      if (to <= end && (!best || to < best.end)) best = { start: to - length, end: to };
    }
    return best && work.kind === 'units' ? { start: startOf(job), end: best.end } : best;
  }

  #openTo(activity: Activity, from: Instant, until: Instant): readonly Stretch[] {
    if (activity.place === 'outside') {
      const span = { start: from, end: Math.max(from, until) + OUTSIDE };
      return uncovered(span, stopsOf(this.#plan, activity, span, this.#plan.zone));
    }
    return this.#plan.windows.flatMap((window) =>
      window.end > from && takes(window, activity) ? this.#ledgers.of(window, activity).usable : [],
    );
  }
}
