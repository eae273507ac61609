// The JSON of `handback --at TIME` about the shift.
import * as z from 'zod/mini';
import * as p from './parts.js';

const { chance, count, flag, list, moment, momentOrNone, number, said, text, texts, whole } = p;

export const subject = z.object({
  kind: z.enum(['lead-in', 'work', 'lead-out']),
  name: text,
  activity: z.optional(text),
});

export const cutOff = z
  .extend(subject, {
    plannedStart: moment,
    plannedFinish: moment,
    latestStart: said(moment, 'Keeps the required margin.'),
    latestFinish: moment,
    onTimeStart: said(moment, 'Hands back at the booked end.'),
    onTimeFinish: moment,
    chanceStart: momentOrNone,
    chanceErrorMinutes: z.nullable(number),
    slackMinutes: whole,
    state: z.enum(['to-come', 'begun', 'done']),
  })
  .check(z.meta({ id: 'cutOff' }));

export const windowVerdict = z.enum(['held', 'chance-low', 'eaten', 'overrun']).check(
  z.meta({
    id: 'verdict',
    description:
      'held: the margin keeps what is required and, where a chance is wanted, it is reached.',
  }),
);

const alsoStop = list(z.object({ activity: text, units: count }));

const advice = z
  .object({
    say: z.enum(['stop', 'carry-on', 'more', 'over']),
    activity: z.nullable(text),
    more: z.nullable(count),
    leaveOut: texts,
    alsoStop: said(alsoStop, 'Other repeated work that is to stop at so many units.'),
    why: text,
  })
  .check(z.meta({ id: 'advice' }));

export const live = z.object({
  at: moment,
  handedBackAt: momentOrNone,
  askedBack: z.nullable(
    z.object({
      by: moment,
      pOnTime: chance,
      standardError: number,
      marginLeftMinutes: whole,
      advice,
    }),
  ),
  doubts: list(
    said(z.object({ code: text, text }), 'Recorded and cannot be so, or taken for granted.'),
  ),
  forecastHandback: moment,
  marginLeftMinutes: whole,
  marginVerdict: z.enum(['held', 'eaten', 'overrun']),
  verdict: windowVerdict,
  next: z.nullable(cutOff),
  nextCutOff: z.nullable(cutOff),
  passedCutOffs: list(cutOff),
  beyondEstimate: texts,
  advice,
  options: list(
    z.object({
      activity: z.optional(text),
      units: z.optional(count),
      more: z.optional(count),
      leaveOut: texts,
      alsoStop,
      pOnTime: chance,
      standardError: number,
      marginMinutes: whole,
      reaches: flag,
      condition: text,
    }),
  ),
  notOffered: list(z.object({ activity: text, why: text })),
});

export type LiveJson = z.infer<typeof live>;
export type CutOffJson = z.infer<typeof cutOff>;
