import type { AccessWindow, Activity, Plan } from '../../model/index.js';
import type { LedgerCache } from '../problem/ledger-cache.js';
import type { Visit } from '../problem/problem.js';
import type { Skeleton } from '../problem/skeleton.js';
import { AlikeAnswers, likenessOf } from './alike.js';
import { reach } from './extension.js';
import { spareOf } from './spare.js';
import { timeReasons } from './time-reasons.js';
import { forgetTrials, trialsOf, type Trials } from './trials.js';
import type { SharedReason } from './types.js';

/** What time and resources say of some work in a window, as if nothing else kept it out. */
export type Timed =
  | {
      readonly fits: true;
      /** Those that leave the most minutes, where nothing else keeps it out. */
      readonly visits: readonly Visit[];
      readonly spareMinutes: number;
      readonly spareAtMost: number;
    }
  | {
      readonly fits: false;
      readonly reasons: readonly SharedReason[];
      /** Minutes by which a later end alone would cure it all. */
      readonly extension: number | undefined;
      readonly proven: boolean;
      /** Minutes after the window's end as far as the answer looked. */
      readonly beyond: number;
    };

/** Nothing was worked out, as the steps for all verdicts were done. */
export const NOT_WORKED_OUT = 'not-worked-out';

/** Kinds of window up to which answers are kept for one list of work. */
const MOST_KINDS = 2000;
const known = new WeakMap<LedgerCache, WeakMap<Skeleton, AlikeAnswers<Timed>>>();

/**
 * What time and resources say; worked out once for all windows that are alike to the work. `NOT_WORKED_OUT` where it is
 * not known yet and the book's effort is spent.
 */
export function timedIn(
  plan: Plan,
  all: readonly Activity[],
  window: AccessWindow,
  book: LedgerCache,
  plain: boolean,
): Timed | typeof NOT_WORKED_OUT {
  const skeleton = book.skeleton(all);
  const trials = trialsOf(plan, skeleton.activities, book);
  const farthest = reach(skeleton.activities);
  const likeness = likenessOf(window, skeleton, book, farthest);
  if (likeness === undefined)
    return book.effort.isSpent ? NOT_WORKED_OUT : workedOut(trials, window, plain);
  const key = plain ? likeness : `!${likeness}`;
  const answers = answersOf(book, skeleton);
  const found = answers.of(window, key);
  if (found) return found;
  if (book.effort.isSpent) return NOT_WORKED_OUT;
  const answer = workedOut(trials, window, plain);
  const beyond = answer.fits ? 0 : Math.min(answer.beyond, farthest);
  answers.keep(window, key, beyond, answer);
  return answer;
}

/** Lets go of what is kept for some work that nobody will ask about again. */
export function forget(all: readonly Activity[], book: LedgerCache): void {
  const skeleton = book.skeleton(all);
  known.get(book)?.delete(skeleton);
  forgetTrials(skeleton.activities, book);
}

function answersOf(book: LedgerCache, skeleton: Skeleton): AlikeAnswers<Timed> {
  let ofBook = known.get(book);
  if (!ofBook) known.set(book, (ofBook = new WeakMap()));
  let answers = ofBook.get(skeleton);
  if (!answers) ofBook.set(skeleton, (answers = new AlikeAnswers(skeleton, book, MOST_KINDS)));
  return answers;
}

function workedOut(trials: Trials, window: AccessWindow, plain: boolean): Timed {
  const trial = { window, longerBy: 0, without: [] };
  const problem = trials.problem(trial);
  const answer = trials.solve(trial, problem);
  if (answer.done) {
    const { visits } = answer;
    // Nobody hears of minutes where something else keeps it out.
    if (!plain) return { fits: true, visits, spareMinutes: 0, spareAtMost: 0 };
    const spare = spareOf(problem, visits, window, trials.book);
    return {
      fits: true,
      visits: spare.visits,
      spareMinutes: spare.minutes,
      spareAtMost: spare.atMost,
    };
  }
  const proven = answer.proven || !plain;
  const { reasons, extension, beyond } = timeReasons({
    trials,
    window,
    problem,
    heads: answer.heads,
    plain,
    proven,
  });
  return { fits: false, reasons, extension, proven, beyond };
}
