import * as z from 'zod/mini';
import { windowVerdict } from './live.js';
import * as p from './parts.js';
import * as plan from './plan-parts.js';

const { chance, count, list, moment, momentOrNone, placement, said, status, text, whole } = p;

export const summaryAnswer = z.object({
  plan: plan.planNamed,
  broken: z.optional(plan.broken),
  unstated: plan.unstated,
  windows: list(
    z.object({
      window: text,
      title: text,
      status,
      startsAt: moment,
      endsAt: moment,
      work: list(placement),
      marginMinutes: said(z.nullable(whole), 'Null where no work is planned in it.'),
      requiredMinutes: z.nullable(count),
      verdict: z.nullable(windowVerdict),
      pOnTime: z.nullable(chance),
    }),
  ),
  keyDates: list(plan.keyDate),
  unplaced: plan.unplaced,
  finishesAt: momentOrNone,
  windowsUsed: count,
  certificate: plan.certificate,
  against: z.optional(plan.planNamed),
  changes: z.optional(plan.changes),
});

/** The JSON of `summary`. */
export type SummaryAnswer = z.infer<typeof summaryAnswer>;
