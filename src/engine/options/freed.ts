import type { PlanDocument } from '../../model/index.js';
import { sitePlan } from '../site/site-plan.js';
import { withCells } from './edits.js';
import { activityOf, type Situation } from './situation.js';

/**
 * The document in which work that leaves the window is not fixed to it any more; the same one where none was. Work of
 * which a part stays can be fixed to no window at all.
 */
export function freedIn(
  document: PlanDocument,
  at: Situation,
  activities: readonly string[],
): PlanDocument {
  return activities
    .filter((id) => activityOf(at, id).window === at.window.id)
    .reduce((made, id) => withCells(made, 'work', 'activity', id, { window: '' }), document);
}

/** The situation in which some work is not fixed to the window. */
export function freedFrom(at: Situation, activity: string): Situation {
  const document = freedIn(at.document, at, [activity]);
  if (document === at.document) return at;
  const { plan, trains } = sitePlan(document);
  return { ...at, document, plan, trains };
}
