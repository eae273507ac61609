import * as z from 'zod/mini';
import * as p from './parts.js';
import * as plan from './plan-parts.js';

const { chance, count, flag, list, moment, momentOrNone, said, status, text, texts, whole } = p;

const move = z.object({
  activity: text,
  from: z.nullable(text),
  to: z.nullable(text),
  units: z.optional(count),
  reason: text,
});

/** With `--from`: how the given plan was repaired. */
export const mendedPart = z.object({
  from: z.object(plan.planName),
  broken: plan.broken,
  moved: list(move),
  fewest: said(
    z.object({ moved: count, atLeast: count, proven: flag }),
    'Pieces that leave their windows, and how many must for as much to be placed and as many key dates to be kept.',
  ),
  more: said(
    z.nullable(z.object({ keyDatesMet: whole, placed: whole, moved: count })),
    'What a plan gains that moves more; null: nothing was found.',
  ),
  frozen: z.optional(
    z.object({
      until: moment,
      pieces: count,
      lost: list(z.object({ activity: text, text })),
    }),
  ),
});

/** With `--chance`: its cost compared with the plan without it. */
export const chancePart = z.object({
  wanted: chance,
  runs: count,
  windows: list(
    z.object({
      window: text,
      pOnTime: chance,
      standardError: p.number,
      reached: flag,
      marginMinutes: whole,
      marginNeeded: whole,
    }),
  ),
  costs: z.object({
    windowsUsed: z.object({ without: count, with: count }),
    finishesAt: z.object({ without: momentOrNone, with: momentOrNone }),
    keyDates: list(
      z.object({
        package: text,
        due: moment,
        without: momentOrNone,
        with: momentOrNone,
        metWithout: flag,
        metWith: flag,
      }),
    ),
    unplaced: texts,
  }),
});

const float = z.object({
  activity: text,
  earliestStart: moment,
  earliestFinish: moment,
  latestStart: moment,
  latestFinish: moment,
  totalFloatMinutes: whole,
  freeFloatMinutes: whole,
  floatIs: z.enum(['working', 'clock']),
  critical: flag,
  slipMinutes: z.optional(whole),
});

export const allocateAnswer = z.object({
  plan: plan.planNamed,
  ...z.partial(mendedPart).shape,
  against: z.optional(plan.planNamed),
  changes: z.optional(plan.changes),
  windows: list(z.object({ window: text, status })),
  placements: list(p.placement),
  unplaced: plan.unplaced,
  finishesAt: said(momentOrNone, 'Null while not all work has a place.'),
  windowsUsed: count,
  keyDates: list(plan.keyDate),
  unstated: plan.unstated,
  certificate: plan.certificate,
  floats: list(float),
  chance: z.optional(chancePart),
});

/** The JSON of `allocate`. */
export type AllocateAnswer = z.infer<typeof allocateAnswer>;
export type MendedPart = z.infer<typeof mendedPart>;
export type ChancePart = z.infer<typeof chancePart>;
