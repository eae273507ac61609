import type { AccessWindow, Plan } from '../../model/index.js';
import type { LedgerCache } from '../problem/ledger-cache.js';
import type { Visit } from '../problem/problem.js';
import type { Skeleton } from '../problem/skeleton.js';
import { AlikeAnswers } from './alike.js';
import { spareOf } from './spare.js';
import { timeReasons } from './time-reasons.js';
import { Trials } from './trials.js';
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
      readonly reasons: readonly TimedReason[];
      /** Minutes by which a later end alone would cure it all. */
      readonly extension: number | undefined;
      readonly proven: boolean;
      /** Minutes after the window's end as far as the answer looked. */
      readonly beyond: number;
    };

/** A reason with its words apart from all else of it. */
export interface TimedReason extends Pick<SharedReason, 'code' | 'words'> {
  readonly rest: Omit<SharedReason, 'code' | 'words'>;
}

/** Nothing was worked out, as the steps for all verdicts were done. */
export const NOT_WORKED_OUT = 'not-worked-out';

/** Kinds of window up to which answers are kept for one list of work. */
const MOST_KINDS = 2000;

/** What is kept of a list of work. */
interface Kept {
  readonly trials: Trials;
  readonly answers: AlikeAnswers<Timed>;
}

const known = new WeakMap<LedgerCache, WeakMap<Skeleton, Kept>>();

/**
 * What time and resources say; worked out once for all windows that are alike to the work. `NOT_WORKED_OUT` where it is
 * not known yet and the book's effort is spent.
 */
export function timedIn(
  plan: Plan,
  skeleton: Skeleton,
  window: AccessWindow,
  book: LedgerCache,
  plain: boolean,
): Timed | typeof NOT_WORKED_OUT {
  const { trials, answers } = keptOf(plan, skeleton, book);
  const likeness = answers.likenessOf(window, trials.reach);
  if (likeness === undefined)
    return book.effort.isSpent ? NOT_WORKED_OUT : workedOut(trials, window, plain);
  const key = plain ? likeness : `!${likeness}`;
  const found = answers.of(window, key);
  if (found) return found;
  if (book.effort.isSpent) return NOT_WORKED_OUT;
  const answer = workedOut(trials, window, plain);
  const beyond = answer.fits ? 0 : Math.min(answer.beyond, trials.reach);
  answers.keep(window, key, beyond, answer);
  return answer;
}

/** Lets go of what is kept for some work that nobody will ask about again. */
export function forgetTimed(skeleton: Skeleton, book: LedgerCache): void {
  known.get(book)?.delete(skeleton);
}

function keptOf(plan: Plan, skeleton: Skeleton, book: LedgerCache): Kept {
  let ofBook = known.get(book);
  if (!ofBook) known.set(book, (ofBook = new WeakMap()));
  let kept = ofBook.get(skeleton);
  if (!kept)
    ofBook.set(
      skeleton,
      (kept = {
        trials: new Trials(plan, skeleton.activities, book),
        answers: new AlikeAnswers(skeleton, book, MOST_KINDS),
      }),
    );
  return kept;
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
    plain,
    proven,
  });
  return {
    fits: false,
    reasons: reasons.map(({ code, words, ...rest }) => ({ code, words, rest })),
    extension,
    proven,
    beyond,
  };
}
