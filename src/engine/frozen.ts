import { dayFromText, startOfDay, type Instant } from '../calendar/index.js';
import type { Placement, Plan, PlanDocument } from '../model/index.js';
import { frozenIn } from '../planner/given/frozen.js';

/** The moment before which the plan in force is frozen; undefined where nothing is. */
export function frozenUntil({ agreed, zone }: PlanDocument): Instant | undefined {
  const day = dayFromText(agreed?.frozenUntil ?? '');
  return day === undefined || !agreed?.now ? undefined : startOfDay(day, zone);
}

/** The pieces of the plan in force that no search and no repair may move. */
export function frozenPieces(document: PlanDocument, plan: Plan): readonly Placement[] {
  const until = frozenUntil(document);
  return until === undefined ? [] : frozenIn(plan, document.agreed!.now!.placements, until).kept;
}
