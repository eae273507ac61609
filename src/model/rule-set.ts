import * as z from 'zod/mini';
import { momentTextSchema } from './decisions.js';
import { curfewBars, spreadShapes, stepConditions } from './rule-words.js';
import { weekdays } from './weekdays.js';

// zod probes for `new Function` unless told not to, which a strict content security policy reports.
z.config({ jitless: true });

const minutes = z.number().check(z.int(), z.minimum(0), z.maximum(100_000));
const clock = z.string().check(z.regex(/^([01]\d|2[0-3]):[0-5]\d$|^24:00$/));
const source = z.optional(z.string());

export const stepSchema = z.strictObject({
  step: z.string().check(z.minLength(1)),
  minutes,
  low: z.optional(minutes),
  high: z.optional(minutes),
  when: z._default(z.enum(stepConditions), 'always'),
  /** Starts when the named step of the same list starts; without it, after everything before it. */
  alongside: z.optional(z.string()),
  /** Protects people: protection, isolation, their removal. No advice ever asks for it to be quicker. */
  protects: z.optional(z.boolean()),
  source,
});

export const curfewSchema = z.strictObject({
  name: z.string().check(z.minLength(1)),
  bars: z._default(z.enum(curfewBars), 'loud'),
  from: clock,
  to: clock,
  /** Days on which the band starts; absent: every day. */
  days: z.optional(z.array(z.enum(weekdays))),
  source,
});

export const shiftSchema = z.strictObject({
  longestMinutes: minutes.check(z.minimum(1)),
  restMinutes: z._default(minutes, 0),
  changeoverMinutes: z._default(minutes, 0),
  source,
});

/** What a handback must reach to be called held, beside its margin. */
export const handbackRuleSchema = z.strictObject({
  /** Chance wanted of handing back on time, above 0 and below 1. */
  chance: z.number().check(z.gt(0), z.lt(1)),
  source,
});

const threePointSchema = z
  .strictObject({ low: z.number(), likely: z.number(), high: z.number() })
  .check(
    z.refine(
      ({ low, likely, high }) => 0 <= low && low <= likely && likely <= high && high <= 100_000,
      '0 <= low <= likely <= high',
    ),
  );

/** Something that may happen and costs time. Exactly one of `activity`, `step` and `at` says what it holds up. */
export const riskEventSchema = z
  .strictObject({
    name: z.string().check(z.minLength(1)),
    /** 0 ... 1. */
    chance: z.number().check(z.minimum(0), z.maximum(1)),
    /** Minutes; `recorded`: as long as recorded overruns were. */
    delay: z.union([threePointSchema, z.literal('recorded')]),
    /** The only window it may happen in; absent: any. */
    window: z.optional(z.string()),
    /** Lengthens this activity, */
    activity: z.optional(z.string()),
    /** or this step, `Possession granted` for a late grant, `Line handed back` for what delays the handback itself, */
    step: z.optional(z.string()),
    stage: z.optional(z.enum(['lead-in', 'lead-out'])),
    /** or stops all work from this moment on. */
    at: z.optional(momentTextSchema),
    source,
  })
  .check(
    z.refine(
      ({ activity, step, at }) =>
        [activity, step, at].filter((item) => item !== undefined).length === 1,
      'say what it holds up: one of activity, step and at',
    ),
  );

/** How sure lengths are, beyond the spread of each. */
export const riskSchema = z.strictObject({
  /** Shape of three-point lengths. */
  shape: z._default(z.enum(spreadShapes), 'triangular'),
  /** A shared cause that lengthens all work by one factor, such as 0.9, 1, 1.3. */
  commonFactor: z.optional(
    threePointSchema.check(z.refine(({ low }) => low > 0, 'a factor above 0')),
  ),
  events: z._default(z.array(riskEventSchema), []),
  source,
});

/** The same as a file of its own, with the chance wanted. */
export const riskFileSchema = z.extend(riskSchema, {
  chance: z.optional(z.number().check(z.gt(0), z.lt(1))),
});

export const ruleSetSchema = z.strictObject({
  schema: z.literal(1),
  name: z.string(),
  zone: z.optional(z.string()),
  leadIn: z._default(z.array(stepSchema), []),
  leadOut: z._default(z.array(stepSchema), []),
  margin: z._default(z.strictObject({ minutes, source }), { minutes: 0 }),
  /** Absent: no chance is asked for, and answers say so. */
  handback: z.optional(handbackRuleSchema),
  /** Absent: triangular spreads, no events, nothing in common. */
  risk: z.optional(riskSchema),
  curfews: z._default(z.array(curfewSchema), []),
  shifts: z.optional(shiftSchema),
  source,
});

/** What is taken from a window before and after the work, when work must stop, and the margin to be held. */
export type RuleSet = z.infer<typeof ruleSetSchema>;
export type RiskSettings = z.infer<typeof riskSchema>;
export type RiskFile = z.infer<typeof riskFileSchema>;
export type RiskEvent = z.infer<typeof riskEventSchema>;
export type Step = z.infer<typeof stepSchema>;
export type Curfew = z.infer<typeof curfewSchema>;
export type ShiftRule = z.infer<typeof shiftSchema>;
