// The plan of work that people agreed on, as part of the document. A search proposes; a person accepts, names and dates.
import type { Instant } from '../calendar/index.js';
import type { AgreedPlans, Proof } from './agreed-schema.js';
import type { Placement } from './placement.js';

/** A plan of work with the name under which it was agreed. */
export interface AgreedPlan {
  readonly name: string;
  /** Counts from 1: each plan agreed has the next. */
  readonly revision: number;
  readonly agreedAt: Instant;
  readonly by?: string;
  readonly placements: readonly Placement[];
  /** What the search that made it proved; absent: nothing is known. */
  readonly proof?: Proof;
}

const none: AgreedPlans = { earlier: [] };

/** Adds an agreed plan. The plan that was in force joins the earlier ones. */
export function withAgreed(
  plans: AgreedPlans | undefined,
  plan: Omit<AgreedPlan, 'revision'>,
): AgreedPlans {
  const { now, earlier, ...rest } = plans ?? none;
  const before = now ? [now, ...earlier] : earlier;
  const revision = 1 + Math.max(0, ...before.map((item) => item.revision));
  const placements = plan.placements.map((placement) => ({ ...placement }));
  return { ...rest, now: { ...plan, revision, placements }, earlier: before };
}

/** Freezes the pieces that begin before a day; undefined freezes nothing. */
export function withFrozen(
  { frozenUntil: _, ...plans }: AgreedPlans,
  until: string | undefined,
): AgreedPlans {
  return until === undefined ? plans : { ...plans, frozenUntil: until };
}

/** Removes an earlier plan. */
export function withoutEarlier(plans: AgreedPlans, revision: number): AgreedPlans {
  return { ...plans, earlier: plans.earlier.filter((item) => item.revision !== revision) };
}
