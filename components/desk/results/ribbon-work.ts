import type { Allocation, HandbackResult, Results } from '../../../src/engine/index.js';
import type { ResultStrings } from '../../results/strings.js';
import { windowWork } from '../../results/window-work.js';
import type { WindowWork } from '../../ribbon/work.js';
import type { Desk } from '../desk-parts.js';

interface Made {
  readonly plan: Allocation;
  readonly handbacks: readonly HandbackResult[];
  readonly words: ResultStrings;
  readonly work: readonly WindowWork[];
}

const made = new WeakMap<Results, Made>();

/** What the plan does in each window, as the picture draws it; null while there is no plan. */
export function ribbonWork(
  { planning, outlooks, words: { results: words } }: Desk,
  results: Results,
): readonly WindowWork[] | null {
  const plan = planning.shown;
  if (!plan) return null;
  const { handbacks } = outlooks;
  const before = made.get(results);
  if (before?.plan === plan && before.handbacks === handbacks && before.words === words)
    return before.work;
  const work = windowWork(plan, handbacks, results, words);
  made.set(results, { plan, handbacks, words, work });
  return work;
}
