import * as z from 'zod/mini';
import { weeksFrom } from '../../model/booking-count.js';
import { anchors } from '../../rules/booking/booking-rules.js';
import * as p from './parts.js';
import { broken, planNamed } from './plan-parts.js';

const { count, list, moment, said, status, sureness, text, texts, whole } = p;

export const milestoneState = z.enum(['met', 'due', 'late', 'missed at adding', 'not needed']);

export const bookAnswer = z.object({
  plan: z.optional(planNamed),
  broken: z.optional(broken),
  rules: text,
  weeksFrom: z.enum(weeksFrom),
  weekStarts: p.weekday,
  asAt: moment,
  milestones: list(
    z.object({
      window: text,
      status: z.optional(status),
      milestone: text,
      by: z.optional(text),
      due: moment,
      state: milestoneState,
      minutesLeft: said(whole, 'Below 0: past.'),
      before: z.enum(anchors),
      note: z.optional(text),
      source: text,
      sureness,
    }),
  ),
  windows: list(
    z.object({
      window: text,
      days: count,
      sharePercent: z.nullable(p.number),
      restriction: z.nullable(text),
      periods: texts,
      work: z.optional(said(texts, 'Activities placed in it, where a plan of work was given.')),
    }),
  ),
});

/** The JSON of `book`. */
export type BookAnswerJson = z.infer<typeof bookAnswer>;
