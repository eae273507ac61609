import * as z from 'zod/mini';

const minutes = z.number().check(z.int(), z.minimum(0), z.maximum(100_000));
const name = z.string().check(z.minLength(1));

/** A moment with its offset, so that it is the same one on a night on which clocks change: `2027-03-28T04:10+01:00`. */
export const momentTextSchema = z
  .string()
  .check(
    z.refine(
      (text) =>
        /^\d{4}-\d\d-\d\dT\d\d:\d\d(:\d\d)?(Z|[+-]\d\d:\d\d)$/.test(text) &&
        Number.isFinite(Date.parse(text)),
      'a moment with its offset, such as 2027-03-28T04:10+01:00',
    ),
  );

/** Work that cannot be put back once begun, or whose putting back takes time. */
export const commitmentSchema = z.strictObject({
  activity: name,
  /** Begun, it must be brought to its end. */
  irreversible: z.boolean(),
  /** Minutes of test after its finish; absent: 0. */
  testMinutes: z.optional(minutes),
  /** Minutes to give up; absent: the window's lead-out for such work. */
  giveUpMinutes: z.optional(minutes),
  /** Minutes to put the railway back and hand it over when the work is abandoned; absent: not asked about. */
  reinstatementMinutes: z.optional(minutes),
});

/** A moment at which somebody says whether the work goes on. Exactly one of `at` and `before` says when. */
export const goPointSchema = z
  .strictObject({
    /** One a window. */
    id: name,
    window: name,
    /** What is decided: `Begin to cut out the deck?` */
    name,
    /** Who holds the decision. */
    holder: z.string(),
    at: z.optional(momentTextSchema),
    /** Id of an activity: decided by the latest moment at which it may begin. */
    before: z.optional(name),
  })
  .check(
    z.refine(
      (point) => (point.at === undefined) !== (point.before === undefined),
      'give the moment (at) or the work it comes before (before), one of the two',
    ),
  );

/** What must be decided during shifts, and what cannot be undone. */
export const decisionsSchema = z.strictObject({
  commitments: z._default(z.array(commitmentSchema), []),
  goPoints: z._default(z.array(goPointSchema), []),
});

export type Commitment = z.infer<typeof commitmentSchema>;
export type GoPoint = z.infer<typeof goPointSchema>;
export type Decisions = z.infer<typeof decisionsSchema>;
