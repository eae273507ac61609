import { MINUTE } from '../../calendar/index.js';
import type { AccessWindow, Activity, Plan } from '../../model/index.js';
import { asOpen, problemOf, type Relaxation } from '../problem/compile.js';
import type { LedgerCache } from '../problem/ledger-cache.js';
import { outlasts } from '../problem/outlasts.js';
import type { Problem } from '../problem/problem.js';
import { minutesDown, minutesUp, type Skeleton } from '../problem/skeleton.js';
import { reach } from './reach.js';
import { certainNo, scheduleAlone, type SoloAnswer } from './schedule-alone.js';

/** A window as some work is tried in it. */
export interface Trial {
  readonly window: AccessWindow;
  /** Whole minutes by which its end is later. */
  readonly longerBy: number;
  /** Left out of account, beside the place. */
  readonly without: readonly Relaxation[];
  /** As if shifts had no end and nothing were barred by the hour. */
  readonly open?: true;
}

/** Answers up to which those of one list of work are kept. */
const MOST_KEPT = 5000;

/**
 * Whether some work can be done in windows as they are, thought longer, or with things left out of account. What comes to
 * the same problem in minutes after the start is solved once.
 */
export class Trials {
  readonly plan: Plan;
  readonly activities: readonly Activity[];
  readonly book: LedgerCache;
  readonly skeleton: Skeleton;
  /** As far as a longer window is looked at, in minutes. */
  readonly reach: number;
  /** Nothing of the work hangs on the day itself: not on time outside a window, on curing or on what the site closes. */
  readonly #isMovable: boolean;
  readonly #isDated: boolean;
  readonly #answers = new Map<string, SoloAnswer>();
  readonly #among = new Map<string, Trials>();
  readonly #kept = new Map<string, unknown>();

  constructor(plan: Plan, activities: readonly Activity[], book: LedgerCache) {
    this.plan = plan;
    this.activities = activities;
    this.book = book;
    this.skeleton = book.skeleton(activities);
    this.reach = reach(activities);
    const { cures, hasOutside, groups } = this.skeleton;
    this.#isDated = this.skeleton.activities.some(
      ({ notBefore, keyDate }) => notBefore !== undefined || keyDate !== undefined,
    );
    this.#isMovable =
      cures === 0 && !hasOutside && groups.every(({ needs }) => (needs.heeds?.length ?? 0) === 0);
  }

  /** The trials of some of the work, by index. */
  among(tasks: readonly number[]): Trials {
    const name = tasks.join();
    let own = this.#among.get(name);
    if (!own) {
      const wanted = new Set(tasks);
      const some = this.activities.filter((_, index) => wanted.has(index));
      this.#among.set(name, (own = new Trials(this.plan, some, this.book)));
    }
    return own;
  }

  problem({ window, longerBy, without, open }: Trial): Problem {
    return problemOf(
      this.plan,
      {
        windows: [window],
        activities: this.activities,
        longerBy,
        without: new Set<Relaxation>(['place', ...without]),
        effort: this.book.effort,
      },
      open ? this.book.withoutStops() : this.book,
    );
  }

  /** @param problem That of the trial, where it is known. */
  solve(trial: Trial, problem?: Problem): SoloAnswer {
    const { window, longerBy, open } = trial;
    if (!open && outlasts(this.skeleton, window, longerBy, this.book)) return certainNo;
    return this.#once(this.#answers, trial, () => scheduleAlone(problem ?? this.problem(trial)));
  }

  /** What is worked out of a trial by its time alone, under a name of its own. */
  once<T>(name: string, trial: Trial, make: () => T): T {
    return this.#once(this.#kept as Map<string, T>, trial, make, name);
  }

  #once<T>(kept: Map<string, T>, trial: Trial, make: () => T, name = ''): T {
    const key = this.#keyOf(trial);
    if (key === undefined) return make();
    const named = name + key;
    let known = kept.get(named);
    if (known === undefined) {
      if (kept.size >= MOST_KEPT) kept.clear();
      kept.set(named, (known = make()));
    }
    return known;
  }

  /** Whether the work sees the same of two windows that have one length and meet the same curfews. */
  isMovable({ isolation }: AccessWindow): boolean {
    return this.#isMovable && isolation.every((section) => section.during === undefined);
  }

  /** All that a trial's problem is made of, in minutes after the start; undefined where that hangs on the day. */
  #keyOf({ window, longerBy, without, open }: Trial): string | undefined {
    if (!this.isMovable(window)) return undefined;
    const { activities, named } = this.skeleton;
    const { usable } = open ? this.book.withoutStops() : this.book;
    const base = Math.floor(window.start / MINUTE);
    const end = minutesUp(window.end, base * MINUTE) + longerBy;
    let key = `${open ? '!' : ''}${without.join()} `;
    for (const { needs } of this.skeleton.groups)
      key += `${usable.of(asOpen(window, needs), needs, longerBy).shape};`;
    if (this.#isDated) {
      const hasStart = !without.includes('not-before');
      const hasDue = !without.includes('key-date');
      for (const { notBefore, keyDate } of activities) {
        // A date that has passed, or that lies past the end, is like any other such date.
        if (hasStart && notBefore !== undefined)
          key += `b${Math.min(Math.max(0, minutesUp(notBefore, base * MINUTE)), end + 1)}`;
        if (hasDue && keyDate !== undefined)
          key += `d${Math.min(Math.max(-1, minutesDown(keyDate, base * MINUTE)), end)}`;
      }
    }
    if (named.size > 0 && !without.includes('resources'))
      for (const resource of this.book.supplies.resources) {
        if (!named.has(resource.id)) continue;
        const { at, free } = this.book.supplies.part(resource, base, 0, end);
        if (at.length > 1) key += `${at.join()} ${free.join()};`;
        else key += `${free[0]!};`;
      }
    return key;
  }
}
