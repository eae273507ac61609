import * as z from 'zod/mini';
import { dayFromText, MINUTE } from '../calendar/index.js';

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

/** The value of an objective, and a bound that no plan is below. */
export const provenShape = {
  name: z.enum(['key-dates', 'margins', 'finish', 'fewest-windows']),
  lowerBound: z.number(),
};

/**
 * What a search proved of certain placements for certain inputs: no plan with the same earlier values has a value below
 * `lowerBound`. It is saved with a plan and counts for nothing once either digest differs.
 */
const proofSchema = z.strictObject({
  /** Digest of the placements. */
  plan: name,
  /** Digest of everything else that the plan depends on. */
  inputs: name,
  /** No more can be placed. */
  mostPlaced: z.boolean(),
  /** The search was stopped before it was done. */
  cutShort: z.boolean(),
  /** In order of importance. */
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
   * A local day of the document, `2027-03-07`: pieces of the plan in force that begin before it keep their place in every
   * search and repair. Absent: nothing is frozen.
   */
  frozenUntil: z.exactOptional(
    z
      .string()
      .check(z.refine((text) => dayFromText(text) !== undefined, 'a date such as 2027-08-30')),
  ),
});

/** The plan of work in force, as a person agreed it, and those before it. */
export type AgreedPlans = z.infer<typeof agreedPlansSchema>;
