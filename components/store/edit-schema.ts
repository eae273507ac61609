import * as z from 'zod/mini';

z.config({ jitless: true });

const rows = z.array(z.array(z.string()));
const place = z.number().check(z.int(), z.minimum(0));

/** An edit as it is kept: read back, it is checked like anything else that comes from outside. */
export const editSchema = z.strictObject({
  label: z.string(),
  changes: z.array(
    z.union([
      z.strictObject({
        table: z.string(),
        splices: z.array(z.strictObject({ at: place, removed: rows, added: rows })),
      }),
      z.strictObject({
        part: z.array(z.string()).check(z.minLength(1), z.maxLength(3)),
        before: z.optional(z.unknown()),
        after: z.optional(z.unknown()),
      }),
    ]),
  ),
});
