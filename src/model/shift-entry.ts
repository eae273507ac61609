import * as z from 'zod/mini';

// zod probes for `new Function` unless told not to, which a strict content security policy reports.
z.config({ jitless: true });

const name = z.string().check(z.minLength(1));
const moment = z.number().check(z.int());
const minutes = z.number().check(z.minimum(0), z.maximum(100_000));
const stage = z.optional(z.enum(['lead-in', 'lead-out']));

const eventSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('granted') }),
  z.strictObject({ kind: z.literal('line-granted'), line: name }),
  z.strictObject({ kind: z.literal('line-expected'), line: name, expectedAt: moment }),
  z.strictObject({ kind: z.literal('asked-back'), by: moment }),
  z.strictObject({ kind: z.literal('end-agreed'), end: moment }),
  z.strictObject({ kind: z.literal('step-started'), step: name, stage }),
  z.strictObject({ kind: z.literal('step-finished'), step: name, stage }),
  z.strictObject({ kind: z.literal('activity-started'), activity: name }),
  z.strictObject({ kind: z.literal('activity-finished'), activity: name }),
  z.strictObject({
    kind: z.literal('units-done'),
    activity: name,
    units: z.number().check(z.int(), z.minimum(0), z.maximum(1_000_000)),
  }),
  z
    .strictObject({
      kind: z.literal('minutes-left'),
      activity: name,
      low: minutes,
      likely: minutes,
      high: minutes,
    })
    .check(
      z.refine(({ low, likely, high }) => low <= likely && likely <= high, 'low <= likely <= high'),
    ),
  z.strictObject({ kind: z.literal('decided'), point: name, name, go: z.boolean() }),
  z.strictObject({ kind: z.literal('handed-back') }),
  z.strictObject({ kind: z.literal('note'), text: z.string() }),
  z.strictObject({ kind: z.literal('struck-out') }),
]);

/** One line of the log of a shift, as a file or a plan that people share holds it. */
export const shiftEntrySchema = z.strictObject({
  id: name,
  at: moment,
  enteredAt: moment,
  by: z.string(),
  event: eventSchema,
  corrects: z.optional(name),
});
