import { verdictOf } from '../../planner/fit/index.js';
import { doubted } from '../left-out.js';
import type { Explain } from './fit-cache.js';

/** All of a verdict. */
export const explain: Explain = (plan, { id, activities, rowsLeftOut }, window, book) => {
  const verdict = verdictOf(plan, id, activities, window, book);
  return rowsLeftOut > 0 ? doubted(verdict, rowsLeftOut) : verdict;
};
