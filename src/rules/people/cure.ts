import { lengthMinutes, MINUTE } from '../../calendar/index.js';
import type { Assignment } from '../../model/index.js';

/** The smallest change to one assignment that ends a breach. Minutes are whole and above 0. */
export type Cure =
  | { readonly change: 'finish earlier'; readonly assignment: string; readonly minutes: number }
  /** The finish stays, so the turn is shorter by that much. */
  | { readonly change: 'start later'; readonly assignment: string; readonly minutes: number }
  | { readonly change: 'drop'; readonly assignment: string }
  /** For an average: these minutes less anywhere in the period. */
  | { readonly change: 'work less in the period'; readonly minutes: number };

/** The assignment after a cure; `undefined` when it is dropped or the cure is not for a single turn. */
export function cured(assignment: Assignment, cure: Cure): Assignment | undefined {
  if (cure.change === 'finish earlier')
    return { ...assignment, end: assignment.end - cure.minutes * MINUTE };
  if (cure.change === 'start later')
    return { ...assignment, start: assignment.start + cure.minutes * MINUTE };
  return undefined;
}

/**
 * The cure that changes the fewest minutes. Finishing earlier is preferred to starting later; the turn is dropped when
 * neither leaves a minute of it.
 *
 * `breaks` must be monotonic: removing more minutes never breaks the limit again. This holds for all limits on work and
 * rest.
 */
export function smallestCure(
  assignment: Assignment,
  breaks: (changed: Assignment) => boolean,
): Cure {
  const length = lengthMinutes({ start: assignment.start, end: assignment.end });
  const fewest = (change: 'finish earlier' | 'start later'): number => {
    const still = (minutes: number): boolean => {
      const changed = cured(assignment, { change, assignment: assignment.id, minutes });
      return changed !== undefined && breaks(changed);
    };
    if (length < 2 || still(length - 1)) return Infinity;
    let bad = 0;
    let good = length - 1;
    while (good - bad > 1) {
      const middle = Math.floor((bad + good) / 2);
      if (still(middle)) bad = middle;
      else good = middle;
    }
    return good;
  };
  const earlier = fewest('finish earlier');
  const later = fewest('start later');
  if (Math.min(earlier, later) === Infinity) return { change: 'drop', assignment: assignment.id };
  return earlier <= later
    ? { change: 'finish earlier', assignment: assignment.id, minutes: earlier }
    : { change: 'start later', assignment: assignment.id, minutes: later };
}
