import * as z from 'zod/mini';
import type { Edit } from '../../src/edits/index.js';

z.config({ jitless: true });

const rows = z.array(z.array(z.string()));
const place = z.number().check(z.int(), z.minimum(0));

/** An edit as the version before kept it: read back, it is checked like anything else that comes from outside. */
const editSchema = z.strictObject({
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

/** The edit of a record of the version before; `undefined` where its text is no edit. */
export function editIn(record: { readonly text: string }): Edit | undefined {
  try {
    const read = editSchema.safeParse(JSON.parse(record.text));
    return read.success ? read.data : undefined;
  } catch {
    return undefined;
  }
}
