import * as z from 'zod/mini';
import { weekdays } from './weekdays.js';
import { surenessSchema } from './sureness-schema.js';

const minutes = z.number().check(z.int(), z.minimum(1), z.maximum(100_000));
const count = z.number().check(z.int(), z.minimum(1), z.maximum(366));
const clock = z.string().check(z.regex(/^([01]\d|2[0-3]):[0-5]\d$/));
const said = {
  name: z.string().check(z.minLength(1)),
  source: z.string().check(z.minLength(1)),
  sureness: surenessSchema,
  /** Overrides the set's setting for this limit alone. */
  travel: z.optional(z.enum(['counted', 'not counted'])),
};

export const limitSchema = z.discriminatedUnion('limit', [
  /** One turn of duty. `on: night` holds for night turns only, `on: early` for turns that start before `startsBefore`. */
  z.strictObject({
    limit: z.literal('longest-turn'),
    minutes,
    on: z._default(z.enum(['every turn', 'night', 'early']), 'every turn'),
    startsBefore: z._default(clock, '05:00'),
    ...said,
  }),
  /** Rest between one turn and the next. `shorterOnce`: may drop to that many minutes once in seven days. */
  z.strictObject({
    limit: z.literal('rest-between-turns'),
    minutes,
    shorterOnce: z.optional(minutes),
    on: z._default(z.enum(['every turn', 'between nights']), 'every turn'),
    ...said,
  }),
  /** An unbroken rest somewhere in every period of `days`. */
  z.strictObject({ limit: z.literal('rest-in-period'), minutes, days: count, ...said }),
  /** `week: rolling` is any seven days; `calendar` the week that begins on `weekStarts`. */
  z.strictObject({
    limit: z.literal('hours-in-seven-days'),
    minutes,
    week: z._default(z.enum(['rolling', 'calendar']), 'rolling'),
    weekStarts: z._default(z.enum(weekdays), 'mon'),
    ...said,
  }),
  z.strictObject({ limit: z.literal('turns-in-fourteen-days'), turns: count, ...said }),
  z.strictObject({ limit: z.literal('nights-in-a-row'), nights: count, ...said }),
  z.strictObject({ limit: z.literal('days-in-a-row'), days: count, ...said }),
  /**
   * A / (B - C): A the hours worked in the reference period, B its days, C the weekly rest due in it over 24. Held
   * to crews of whose turns at least `nightShare` are night turns. `minutes` is the most in each 24 hours.
   */
  z.strictObject({
    limit: z.literal('night-average'),
    minutes,
    days: count,
    weeklyRestHours: z._default(z.number().check(z.minimum(0), z.maximum(168)), 24),
    nightShare: z._default(z.number().check(z.minimum(0), z.maximum(1)), 1 / 3),
    ...said,
  }),
  /** No averaging: minutes in any 24 hours in which a night turn is worked. */
  z.strictObject({ limit: z.literal('night-hazard'), minutes, ...said }),
  /** Average minutes a week over `days`. */
  z.strictObject({ limit: z.literal('week-average'), minutes, days: count, ...said }),
]);

/**
 * Limits on hours, as a firm or a law states them: data to be edited, never built in.
 *
 * `travel` counts travelling as duty or not. A turn is a night turn when at least `nightLeastMinutes` of it fall in
 * the local band `nightFrom`-`nightTo`.
 */
export const limitSetSchema = z.strictObject({
  schema: z.literal(1),
  name: z.string().check(z.minLength(1)),
  travel: z._default(z.enum(['counted', 'not counted']), 'counted'),
  nightFrom: z._default(clock, '23:00'),
  nightTo: z._default(clock, '06:00'),
  nightLeastMinutes: z._default(minutes, 180),
  limits: z.array(limitSchema),
  note: z.optional(z.string()),
});

export type Limit = z.infer<typeof limitSchema>;
export type LimitKind = Limit['limit'];
export type LimitOf<K extends LimitKind> = Extract<Limit, { limit: K }>;
export type LimitSet = z.infer<typeof limitSetSchema>;
