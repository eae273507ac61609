// The JSON of `people`, `noise` and `lifting`.
import * as z from 'zod/mini';
import * as p from './parts.js';

const { count, day, flag, list, moment, momentOrNone, number, said, sureness, text, texts } = p;

const mend = z
  .union([
    z.object({
      change: z.enum(['finish earlier', 'start later', 'move earlier', 'move later']),
      turn: text,
      minutes: count,
      changedMinutes: count,
      lostMinutes: count,
    }),
    z.object({
      change: z.literal('give to'),
      turn: text,
      crew: text,
      competence: said(
        z.optional(texts),
        'What the turn needs and the crew holds. Absent: the roster names none, and nothing was checked.',
      ),
      changedMinutes: count,
      lostMinutes: count,
    }),
    z.object({
      change: z.literal('drop'),
      turn: text,
      changedMinutes: count,
      lostMinutes: count,
    }),
  ])
  .check(z.meta({ id: 'mend', description: 'A change of the roster, tried and checked.' }));

export const peopleAnswer = z.object({
  limits: text,
  breaches: list(
    z.object({
      crew: text,
      turn: text,
      limit: text,
      found: number,
      allowed: number,
      unit: text,
      from: moment,
      to: moment,
      mend: said(z.nullable(mend), 'Null: no change of one turn ends it.'),
      source: text,
      sureness,
    }),
  ),
  together: z.object({ changes: list(mend), left: count }),
  windows: list(
    z.object({
      window: text,
      crewsNeeded: z.nullable(count),
      rostered: texts,
      unmannedMinutes: count,
    }),
  ),
});

export const noiseAnswer = z.object({
  limits: text,
  activities: list(
    z.object({
      activity: text,
      notListed: said(texts, 'Resources of which no level is known: taken as silent.'),
      periods: list(
        z.object({
          period: text,
          dwelling: text,
          levelDb: number,
          limitDb: number,
          overDb: number,
          mayBeLoud: flag,
        }),
      ),
      curfews: list(
        z.object({
          name: text,
          bars: z.enum(['loud', 'all']),
          from: text,
          to: text,
          days: z.optional(list(p.weekday)),
          source: z.optional(text),
        }),
      ),
    }),
  ),
  consent: list(
    z.object({
      window: text,
      applyBy: day,
      talkBy: day,
      state: z.enum(['in time', 'too late for talks', 'too late']),
    }),
  ),
  caution: text,
});

export const liftingAnswer = z.object({
  limitMps: number,
  windows: list(
    z.object({
      window: text,
      lostMinutes: count,
      openMinutes: count,
      highestGustMps: z.nullable(number),
      closed: list(z.object({ from: moment, to: moment })),
    }),
  ),
  pours: list(
    z.object({
      activity: text,
      pouredAt: moment,
      readyAt: said(momentOrNone, 'Null: the temperatures end before it has cured.'),
      needed: number,
      unit: text,
      assumedMinutes: count,
    }),
  ),
});

export type PeopleAnswerJson = z.infer<typeof peopleAnswer>;
export type NoiseAnswerJson = z.infer<typeof noiseAnswer>;
export type LiftingAnswerJson = z.infer<typeof liftingAnswer>;
