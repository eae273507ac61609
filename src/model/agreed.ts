// The plan of work that people agreed on, as part of the document. A search proposes; a person accepts, names and dates.
import * as z from 'zod/mini';
import { dayFromText, MINUTE, type Instant } from '../calendar/index.js';
import type { Placement } from './placement.js';

/** Epoch milliseconds of a whole minute. */
const instant = z.number().check(z.int(), z.multipleOf(MINUTE));
const name = z.string().check(z.minLength(1), z.maxLength(200));

const placementSchema = z
  .strictObject({
    activity: name,
    window: z.nullable(name),
    from: instant,
    to: instant,
    units: z.exactOptional(z.number().check(z.int(), z.minimum(1))),
  })
  .check(z.refine((item) => item.to >= item.from, 'a piece of work that ends after it begins'));

/** A value that is aimed at, and what no plan is below. */
export const provenShape = {
  name: z.enum(['key-dates', 'margins', 'finish', 'fewest-windows']),
  lowerBound: z.number(),
};

/**
 * What a search proved of some placements in some inputs: no plan has a lower value than `lowerBound`, each with the values
 * before it kept. It is kept beside a plan and says nothing once either digest is another's.
 */
const proofSchema = z.strictObject({
  /** Digest of the placements. */
  plan: name,
  /** Digest of all else that the plan hangs on. */
  inputs: name,
  /** No more can be placed. */
  mostPlaced: z.boolean(),
  /** The search was ended before its work was done. */
  cutShort: z.boolean(),
  /** In the order in which they were aimed at. */
  objectives: z.array(z.strictObject(provenShape)),
});

export type Proof = z.infer<typeof proofSchema>;

const agreedPlanSchema = z.strictObject({
  name,
  /** Counts the agreements of a document, 1 for the first. */
  revision: z.number().check(z.int(), z.minimum(1)),
  /** When it was agreed, epoch milliseconds. */
  agreedAt: z.number().check(z.int()),
  /** Who agreed it, in their own words. */
  by: z.exactOptional(name),
  placements: z.array(placementSchema),
  proof: z.exactOptional(proofSchema),
});

export const agreedPlansSchema = z.strictObject({
  /** The plan in force; absent: none is. */
  now: z.exactOptional(agreedPlanSchema),
  /** Those before it, the latest first. */
  earlier: z.array(agreedPlanSchema),
  /**
   * A local day of the document, `2027-03-07`: what the plan in force begins before it keeps its place, whatever is
   * searched for or mended. Absent: nothing is frozen.
   */
  frozenUntil: z.exactOptional(
    z
      .string()
      .check(z.refine((text) => dayFromText(text) !== undefined, 'a date such as 2027-08-30')),
  ),
});

/** A plan of work with the name under which it was agreed. */
export interface AgreedPlan {
  readonly name: string;
  /** Counts from 1: each plan agreed has the next. */
  readonly revision: number;
  readonly agreedAt: Instant;
  readonly by?: string;
  readonly placements: readonly Placement[];
  /** What the search that made it proved of it then; absent: nothing is known. */
  readonly proof?: Proof;
}

/** The plan of work in force, as a person agreed it, and those before it. */
export type AgreedPlans = z.infer<typeof agreedPlansSchema>;

const none: AgreedPlans = { earlier: [] };

/** The part of a document with one more plan agreed; the one in force joins the earlier ones. */
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

/** The part with what begins before a day frozen; undefined sets it free. */
export function withFrozen(
  { frozenUntil: _, ...plans }: AgreedPlans,
  until: string | undefined,
): AgreedPlans {
  return until === undefined ? plans : { ...plans, frozenUntil: until };
}

/** The part without one of its earlier plans. */
export function withoutEarlier(plans: AgreedPlans, revision: number): AgreedPlans {
  return { ...plans, earlier: plans.earlier.filter((item) => item.revision !== revision) };
}
