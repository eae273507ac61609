import { addMinutes, type Instant } from '../../calendar/index.js';
import type { Problem, Visit } from '../fit/index.js';

/** When the last of the work is finished; null where there is none. */
export function finishOf(problem: Problem, visits: readonly Visit[]): Instant | null {
  if (visits.length === 0) return null;
  return addMinutes(problem.base, Math.max(...visits.map((visit) => visit.end)));
}
