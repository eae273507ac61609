import * as z from 'zod/mini';
import { weekdays } from './weekdays.js';
import { surenessSchema } from './sureness-schema.js';

const clock = z.string().check(z.regex(/^([01]\d|2[0-3]):[0-5]\d$|^24:00$/));
const text = z.string().check(z.minLength(1));
const db = z.number().check(z.minimum(0), z.maximum(200));

/**
 * The levels that neighbours' hours allow: data to be edited, never built in.
 *
 * Each period is made of daily bands of local time, `days` those on which a band starts. A level is over when it is
 * above the limit; on it, it is within.
 */
export const noiseLimitsSchema = z.strictObject({
  schema: z.literal(1),
  name: text,
  /** Whether the limits hold at the front of the building. */
  facade: z._default(z.boolean(), true),
  periods: z.array(
    z.strictObject({
      period: text,
      bands: z.array(
        z.strictObject({ from: clock, to: clock, days: z.optional(z.array(z.enum(weekdays))) }),
      ),
      limitDb: db,
      /** Where it is louder than the limit without the work, that level is the limit. */
      orAmbient: z._default(z.boolean(), false),
      source: text,
      sureness: surenessSchema,
    }),
  ),
  note: z.optional(z.string()),
});

export type NoiseLimits = z.infer<typeof noiseLimitsSchema>;

/** A row of a plant list: LAeq at 10 m, with where it was read. */
export const plantLevelSchema = z.strictObject({
  plant: text,
  levelDb: db,
  source: text,
  sureness: surenessSchema,
});
