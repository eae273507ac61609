import * as z from 'zod/mini';
import { bookingCountSchema, windowStatuses } from '../../model/index.js';
import { surenessSchema } from '../people/index.js';

const whole = z.number().check(z.int(), z.minimum(0), z.maximum(5000));
const text = z.string().check(z.minLength(1));
const said = { source: text, sureness: surenessSchema };

/** What a lead time is counted back from. */
export const anchors = ['window', 'railway week', 'four-week period', 'timetable change'] as const;
export type Anchor = (typeof anchors)[number];

export const milestoneSchema = z.strictObject({
  milestone: text,
  /** Who has to act, in the user's own words. */
  by: z.optional(text),
  before: z._default(z.enum(anchors), 'window'),
  months: z._default(whole, 0),
  weeks: z._default(whole, 0),
  days: z._default(whole, 0),
  /** Local time of the due day; without it the last minute of the day. */
  time: z._default(z.string().check(z.regex(/^([01]\d|2[0-3]):[0-5]\d$/)), '23:59'),
  /** Counts as met once the window has this status. */
  metWhen: z.optional(z.enum(windowStatuses)),
  /** Applies only to restrictions of these classes. Absent: to every window. */
  classes: z.optional(z.array(text)),
  ...said,
});

export const restrictionClassSchema = z.strictObject({
  class: text,
  /** More consecutive days than this. */
  daysOver: z.optional(whole),
  /** No more consecutive days than this. */
  daysAtMost: z.optional(whole),
  /** More than this share of the day's trains cancelled, re-routed or replaced, in per cent. */
  shareOver: z.number().check(z.minimum(0), z.maximum(100)),
  ...said,
});

/**
 * What has to be asked, offered and published, and by when. Editable data, never built in.
 *
 * Months are taken off first, then weeks and days, all by the local calendar. `classes` are tried in order; a
 * restriction in none of them has the class `otherwise`.
 */
export const bookingRulesSchema = z.strictObject({
  schema: z.literal(1),
  name: text,
  /** `weeksFrom` applies to milestones in weeks counted from the window; `days` are always counted from the window itself. */
  ...bookingCountSchema.shape,
  milestones: z
    .array(milestoneSchema)
    .check(
      z.refine(
        (all) => new Set(all.map((item) => item.milestone)).size === all.length,
        'two milestones have the same name',
      ),
    ),
  classes: z._default(z.array(restrictionClassSchema), []),
  otherwise: z._default(text, 'unclassed'),
  note: z.optional(z.string()),
});

/** Milestones with lead times: by when a window has to be asked for, offered and published. */
export type BookingRules = z.infer<typeof bookingRulesSchema>;
export type MilestoneRule = z.infer<typeof milestoneSchema>;
