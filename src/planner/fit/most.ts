import type { AccessWindow, Activity, Plan } from '../../model/index.js';
import { problemOf } from '../problem/compile.js';
import type { LedgerCache } from '../problem/ledger-cache.js';
import { barringOf } from '../problem/never-words.js';
import { outlasts } from '../problem/outlasts.js';
import type { Skeleton } from '../problem/skeleton.js';
import { AlikeAnswers } from './alike.js';
import { Levels } from './levels.js';
import { scheduleAlone } from './schedule-alone.js';
import type { MostThatFits } from './types.js';

/** Schedules asked for at most, of one package in one window. */
const MOST_ASKED = 240;
/** Steps of search at most, over all of them. */
const MOST_STEPS = 400_000;

/**
 * The most of a package that goes in a window that is its own: as many pieces finished as can be, then as many units of
 * repeated work. Nothing goes in whose work before it does not, nothing opens the line that is not made good there, and
 * nothing is late. Outside work is done where it is waited for, and is not counted.
 *
 * Best first over how many units of each activity go in, from all that could be down to the first that has a
 * schedule: what fits still fits with less, so that the first is the most.
 *
 * @returns `undefined` where the work is not known from a window alike and the book's effort is spent.
 */
export function mostThatFits(
  plan: Plan,
  all: readonly Activity[],
  window: AccessWindow,
  book: LedgerCache,
): MostThatFits | undefined {
  const skeleton = book.skeleton(all);
  const { takes, takesNone } = barringOf(window, skeleton);
  if (takesNone) return nothingOf(levelsOf(skeleton));
  const answers = answersOf(book, skeleton);
  const likeness = answers.likenessOf(window, 0);
  const work = (): MostThatFits | undefined =>
    book.effort.isSpent ? undefined : mostIn(plan, skeleton, takes, window, book);
  if (likeness === undefined) return work();
  const key = `${takes.map(Number).join('')} ${likeness}`;
  const known = answers.of(window, key);
  if (known) return known;
  const most = work();
  if (most) answers.keep(window, key, 0, most);
  return most;
}

const nothingOf = (levels: Levels): MostThatFits => ({
  pieces: 0,
  ofPieces: levels.pieces,
  units: 0,
  ofUnits: levels.repeatedUnits,
  proven: true,
});

/** Answers kept of one package before they are let go of. */
const MOST_KEPT = 2000;
const known = new WeakMap<LedgerCache, WeakMap<Skeleton, AlikeAnswers<MostThatFits>>>();

/** What is known of a package by what its work can see of a window. */
function answersOf(book: LedgerCache, skeleton: Skeleton): AlikeAnswers<MostThatFits> {
  let ofBook = known.get(book);
  if (!ofBook) known.set(book, (ofBook = new WeakMap()));
  let answers = ofBook.get(skeleton);
  if (!answers) ofBook.set(skeleton, (answers = new AlikeAnswers(skeleton, book, MOST_KEPT)));
  return answers;
}

/** Lets go of what is kept for some work that nobody will ask about again. */
export function forgetMost(all: readonly Activity[], book: LedgerCache): void {
  known.get(book)?.delete(book.skeleton(all));
}

function mostIn(
  plan: Plan,
  skeleton: Skeleton,
  takes: readonly boolean[],
  window: AccessWindow,
  book: LedgerCache,
): MostThatFits {
  const levels = levelsOf(skeleton);
  const { effort } = book;
  const before = effort.spent;
  let asked = 0;
  let certain = true;
  const fits = (some: readonly number[]): boolean => {
    if (levels.isNothing(some)) return true;
    asked += 1;
    const activities = levels.activities(some);
    if (outlasts(book.skeleton(activities), window, 0, book)) return false;
    const answer = scheduleAlone(problemOf(plan, { windows: [window], activities, effort }, book));
    if (!answer.proven) certain = false;
    return answer.done;
  };
  const found = (some: readonly number[], proven: boolean): MostThatFits => ({
    ...levels.count(some),
    ofPieces: levels.pieces,
    ofUnits: levels.repeatedUnits,
    proven,
  });

  let top = levels.lowered(levels.all.map((units, at) => (takes[at] ? units : 0)));
  if (fits(top)) return found(top, certain);
  // What cannot go in with nothing but what it waits for goes in with nothing.
  for (const at of skeleton.order) {
    const most = mostAlone(levels, top, at, fits);
    if (most < top[at]!) top = levels.lowered(top.map((units, i) => (i === at ? most : units)));
  }

  const waiting = new Waiting(levels);
  waiting.add(top);
  const seen = new Set([top.join()]);
  for (let next = waiting.take(); next; next = waiting.take()) {
    if (asked >= MOST_ASKED || effort.spent - before >= MOST_STEPS)
      return found(byRule(levels, top, fits), false);
    if (fits(next)) return found(next, certain);
    for (const at of skeleton.order) {
      if (next[at] === 0 || !levels.isInside(at)) continue;
      const less = levels.lowered(next.map((units, i) => (i === at ? units - 1 : units)));
      const key = less.join();
      if (seen.has(key)) continue;
      seen.add(key);
      waiting.add(less);
    }
  }
  return found(
    levels.all.map(() => 0),
    certain,
  );
}

const kept = new WeakMap<Skeleton, Levels>();

function levelsOf(skeleton: Skeleton): Levels {
  let known = kept.get(skeleton);
  if (!known) kept.set(skeleton, (known = new Levels(skeleton)));
  return known;
}

/** The most units of an activity that go in with no more than what it takes for them. */
function mostAlone(
  levels: Levels,
  top: readonly number[],
  at: number,
  fits: (some: readonly number[]) => boolean,
): number {
  const goes = (units: number): boolean => {
    const some = levels.needed(at, units);
    return some.every((each, i) => each <= top[i]!) && fits(some);
  };
  let high = top[at]!;
  if (high === 0 || !levels.isInside(at) || goes(high)) return high;
  let low = 0;
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (goes(middle)) low = middle;
    else high = middle;
  }
  return low;
}

/** A way to do much, found by adding one activity after another. */
function byRule(
  levels: Levels,
  top: readonly number[],
  fits: (some: readonly number[]) => boolean,
): readonly number[] {
  let best: readonly number[] = levels.all.map(() => 0);
  for (const at of levels.order) {
    for (const units of new Set([top[at]!, Math.floor(top[at]! / 2), 1])) {
      if (units === 0 || units > top[at]!) continue;
      const some = levels.needed(at, units).map((each, i) => Math.max(each, best[i]!));
      if (some.some((each, i) => each > top[i]!) || !fits(some)) continue;
      best = some;
      break;
    }
  }
  return best;
}

/** Counts of units to be tried, those with the most pieces finished first, then the most units, then the first put in. */
class Waiting {
  readonly #levels: Levels;
  readonly #byCount = new Map<number, { readonly lists: (readonly number[])[]; next: number }>();

  constructor(levels: Levels) {
    this.#levels = levels;
  }

  add(some: readonly number[]): void {
    const { pieces, units } = this.#levels.count(some);
    const count = pieces * (this.#levels.repeatedUnits + 1) + units;
    const known = this.#byCount.get(count);
    if (known) known.lists.push(some);
    else this.#byCount.set(count, { lists: [some], next: 0 });
  }

  /** Takes the best out; `undefined`: none is left. */
  take(): readonly number[] | undefined {
    if (this.#byCount.size === 0) return undefined;
    const most = Math.max(...this.#byCount.keys());
    const best = this.#byCount.get(most)!;
    const found = best.lists[best.next]!;
    best.next += 1;
    if (best.next === best.lists.length) this.#byCount.delete(most);
    return found;
  }
}
