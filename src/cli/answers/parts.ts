// Parts of answers. Each answer is described once, here and in the files beside this: the types of the verbs and the
// JSON schemas in the package are both derived from it.
import * as z from 'zod/mini';
import { surenesses, weekdays, windowStatuses, type WindowStatus } from '../../model/index.js';

// zod probes for `new Function` unless told not to, which a strict content security policy reports.
z.config({ jitless: true });

/** A read-only list. */
export const list = <T extends z.core.$ZodType>(of: T): z.ZodMiniReadonly<z.ZodMiniArray<T>> =>
  z.readonly(z.array(of));

export const text = z.string();
export const flag = z.boolean();
export const number = z.number();
export const whole = z.number().check(z.int());
export const count = whole.check(z.minimum(0));
export const texts = list(text);

/** The schema with a description; wrapped, so that the original keeps its own name. */
export const said = <T extends z.core.$ZodType>(
  schema: T,
  description: string,
): z.ZodMiniReadonly<T> => z.readonly(schema).check(z.meta({ description }));

const asMoment = /^\d{4}-\d\d-\d\dT\d\d:\d\d:00[+-]\d\d:\d\d$/;
export const moment = text.check(
  z.regex(asMoment),
  z.meta({ id: 'moment', description: 'ISO 8601 to the minute, with the offset then in force.' }),
);
export const momentOrNone = z.nullable(moment);
export const day = text.check(
  z.regex(/^\d{4}-\d\d-\d\d$/),
  z.meta({ id: 'day', description: 'A local day, ISO 8601.' }),
);
export const money = text.check(
  z.regex(/^-?\d+(\.\d+)?$/),
  z.meta({ id: 'money', description: 'Decimal text, in the currency of the answer.' }),
);
export const chance = number.check(
  z.minimum(0),
  z.maximum(1),
  z.meta({ id: 'chance', description: 'Share of simulated runs, 0 to 1.' }),
);
export const status = z
  .enum(windowStatuses as readonly [WindowStatus, ...WindowStatus[]])
  .check(z.meta({ id: 'status', description: 'How far the booking of the window has come.' }));
export const weekday = z.enum(weekdays);
export const sureness = z
  .enum(surenesses)
  .check(z.meta({ id: 'sureness', description: 'How well a published figure is known.' }));

export const note = z
  .object({
    code: said(text, 'kebab-case, stable.'),
    text,
    count: z.optional(said(count, 'How many rows, names or headings it is about.')),
  })
  .check(z.meta({ id: 'note', description: 'What the answer rests on and nobody said.' }));

export const fault = z.object({
  code: text,
  text,
  activity: z.optional(text),
  package: z.optional(text),
});

export const reason = z
  .object({
    code: said(text, 'kebab-case, stable.'),
    text,
    shortByMinutes: z.optional(
      said(count, 'Minutes missing, where more time in the window would cure it.'),
    ),
    atMost: z.optional(said(z.literal(true), 'Fewer minutes may do.')),
    resources: z.optional(texts),
    activities: z.optional(said(texts, 'All that it says the same of.')),
    enough: z.optional(
      said(z.enum(['proven', 'found']), 'One of the fewest causes that are enough for the no.'),
    ),
  })
  .check(z.meta({ id: 'reason' }));

export const placement = z
  .object({
    activity: text,
    window: z.nullable(said(text, 'Null: work outside, which needs no window.')),
    from: moment,
    to: moment,
    units: z.optional(said(count, 'Units done in this visit, of repeated work.')),
  })
  .check(z.meta({ id: 'placement', description: 'Where and when a piece of work lies.' }));
export type PlacementJson = z.infer<typeof placement>;
