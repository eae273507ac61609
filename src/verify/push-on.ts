// How soon work can be over when something before it slips: asked of links and usable time alone, so that nothing real is
// ever sooner. Float that even this does not leave is none.
import { clearOf } from './bands.js';
import type { Due } from './dues.js';
import type { Ledgers } from './usable.js';
import { stopsOf } from './usable.js';
import { takes } from './where.js';
import { MINUTE, type Activity, type Instant, type Plan, type Stretch } from './words.js';
import { endOf, startOf, type Job } from './work.js';

const DAY = 1440 * MINUTE;
/** Time looked at past the soonest end of work outside windows, which has no end of its own. */
const OUTSIDE = 60 * DAY;

export class PushOn {
  readonly #plan: Plan;
  readonly #jobs: ReadonlyMap<string, Job>;
  readonly #ledgers: Ledgers;
  readonly #followers = new Map<string, Job[]>();
  /** By when each must be over: its key date, or as late as work of that date is planned. */
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
   * The first activity that finds no time, or by which a key date is missed or missed by more, when one finishes so late at
   * the soonest; `undefined` where none is seen to.
   */
  firstHurt(id: string, finish: Instant): string | undefined {
    // What each must wait for, the latest so far, and how soon each can be then.
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

  /** The soonest that a piece can lie that begins no sooner, ends no sooner, and is not moved forward. */
  #soonest(job: Job, begin: Instant, over: Instant): Stretch | undefined {
    const { work } = job.activity;
    const last = job.pieces.at(-1)!;
    const length =
      MINUTE *
      (work.kind === 'whole'
        ? work.minutes
        : work.setUpMinutes + work.minutesPerUnit + work.makeSafeMinutes);
    // Of repeated work only the last unit is looked at: the rest may stay where it is.
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
      return clearOf(span, stopsOf(this.#plan, activity, span, this.#plan.zone));
    }
    return this.#plan.windows.flatMap((window) =>
      window.end > from && takes(window, activity) ? this.#ledgers.of(window, activity).usable : [],
    );
  }
}
