// Parts of answers about a plan of work.
import * as z from 'zod/mini';
import * as p from './parts.js';

const { count, fault, flag, list, moment, momentOrNone, reason, said, text, texts, whole } = p;

/** The agreed name of a plan, as far as its file gives it. */
export const planName = {
  id: said(text, 'Changes with the placements, and with nothing else.'),
  name: z.optional(text),
  revision: z.optional(count),
  agreedAt: z.optional(moment),
  by: z.optional(text),
};

export const planNamed = z
  .object({ ...planName, given: said(flag, 'False: made for this answer.') })
  .check(z.meta({ id: 'plan', description: 'The plan of work that the answer rests on.' }));

export const broken = list(
  said(
    z.object({ activity: text, code: text, text }),
    'Something of a given plan that no longer holds.',
  ),
);

export const unplaced = list(z.object({ activity: text, reasons: list(reason) }));

export const unstated = list(
  z
    .object({
      activity: text,
      other: text,
      kind: z.enum(['between-windows', 'same-place']),
      windows: texts,
      text,
    })
    .check(
      z.meta({
        id: 'unstated',
        description:
          'Nobody said whether the line is fit to run in between, or whether the place may be shared.',
      }),
    ),
);

export const keyDate = z
  .object({
    package: text,
    due: moment,
    forecast: said(momentOrNone, 'Null while some of the package has no place.'),
    floatMinutes: z.nullable(said(whole, 'Below 0: minutes late.')),
    floatAtLeast: z.optional(z.literal(true)),
    floatWindows: z.nullable(count),
    met: flag,
    sharesFloatWith: texts,
  })
  .check(z.meta({ id: 'keyDate' }));

export const certificate = z
  .object({
    proven: said(flag, 'Of the first objective, of this very plan; it speaks of the search alone.'),
    lowerBound: p.number,
    objective: p.number,
    mostPlaced: said(flag, 'It is certain that no more can be placed.'),
    cutShort: flag,
    holds: flag,
    verified: said(flag, 'The independent check looked and found no fault.'),
    faults: z.optional(list(fault)),
    objectives: list(
      z.object({
        name: z.enum(['key-dates', 'margins', 'finish', 'fewest-windows']),
        value: p.number,
        lowerBound: p.number,
        proven: flag,
      }),
    ),
    inputs: z.optional(
      said(
        text,
        'Digest of the files as read: with the same and the same placements this still counts.',
      ),
    ),
    text,
  })
  .check(z.meta({ id: 'certificate', description: 'What is known of how good the plan is.' }));

export const changes = list(
  z.object({
    activity: text,
    kind: z.enum(['new', 'out', 'window', 'time']),
    was: text,
    is: text,
  }),
);
