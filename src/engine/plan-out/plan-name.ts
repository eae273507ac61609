import { isoText, type Instant } from '../../calendar/index.js';
import type { AgreedPlan, AgreedPlans, Placement } from '../../model/index.js';
import { planId } from '../../planner/plan-id.js';

/** A plan of work as people know it: by its id alone while nobody has agreed it. */
export interface PlanName {
  readonly id: string;
  readonly name?: string;
  /** Counts the agreements of a document, 1 for the first. */
  readonly revision?: number;
  readonly agreedAt?: Instant;
  readonly by?: string;
}

/** The name of a plan that was agreed. */
export function nameOf({ name, revision, agreedAt, by, placements }: AgreedPlan): PlanName {
  return { id: planId(placements), name, revision, agreedAt, ...(by !== undefined && { by }) };
}

/** The name under which some placements were agreed, the latest first; their id where they never were. */
export function nameAmong(
  plans: AgreedPlans | undefined,
  placements: readonly Placement[],
): PlanName {
  const id = planId(placements);
  const all: readonly AgreedPlan[] = [
    ...(plans?.now ? [plans.now] : []),
    ...(plans?.earlier ?? []),
  ];
  const known = all.find((plan) => planId(plan.placements) === id);
  return known ? nameOf(known) : { id };
}

/** `plan 3 "Spring", agreed 2027-03-01 09:00 by A. Moss (id 0123456789abcdef)`; a proposal says that it is one. */
export function planNameText({ id, name, revision, agreedAt, by }: PlanName, zone: string): string {
  if (name === undefined) return `proposal, not agreed (id ${id})`;
  const when = agreedAt === undefined ? '' : `, agreed ${minuteText(agreedAt, zone)}`;
  return `plan ${revision === undefined ? '' : `${revision} `}"${name}"${when}${by === undefined ? '' : ` by ${by}`} (id ${id})`;
}

/** `2027-07-26 03:00`, local to a zone. */
export const minuteText = (at: Instant, zone: string): string =>
  isoText(at, zone).slice(0, 16).replace('T', ' ');
