import * as z from 'zod/mini';
import { milestoneState } from './book.js';
import * as p from './parts.js';
import { broken, planNamed } from './plan-parts.js';

const { count, flag, list, moment, number, placement, said, status, text, texts, whole } = p;

const span = z.object({
  weeks: count,
  until: moment,
  windows: list(
    z.object({
      window: text,
      title: text,
      status,
      startsAt: moment,
      endsAt: moment,
      work: list(placement),
    }),
  ),
  outside: list(placement),
  wanted: list(
    z.object({
      resource: text,
      peak: number,
      peakAt: moment,
      held: said(z.nullable(number), 'Null: not listed, so taken as unlimited.'),
      minutes: number,
      windows: texts,
      activities: texts,
    }),
  ),
  bookings: list(
    z.object({
      window: text,
      milestone: text,
      by: z.optional(text),
      due: moment,
      state: milestoneState,
      minutesLeft: whole,
    }),
  ),
  notReady: list(z.object({ code: text, about: text, text })),
});

export const lookAheadAnswer = z.object({
  plan: planNamed,
  broken: z.optional(broken),
  asAt: moment,
  rules: text,
  rostered: flag,
  spans: said(list(span), 'The shortest first.'),
});

/** The JSON of `look-ahead`. */
export type LookAheadAnswer = z.infer<typeof lookAheadAnswer>;
