/** The schema number that this version writes. */
export const latestSchema = 1;

/**
 * `migrations[n]` makes a document of schema `n + 1` of one of schema `n`. It takes unknown data and may throw.
 *
 * Schema 1 is the first, so there is none yet. To change the schema: raise `latestSchema`, add the step here, keep a
 * file of the old schema in `tests/golden`.
 */
export const migrations: Readonly<Record<number, (document: unknown) => unknown>> = {};

export type Migrated =
  | { readonly document: unknown; readonly from: number }
  | { readonly trouble: 'no-schema' | 'newer' | 'no-way-up'; readonly schema?: number };

/** Brings a saved document step by step to the latest schema. The result is not checked against it here. */
export function migrateDocument(
  saved: unknown,
  steps: Readonly<Record<number, (document: unknown) => unknown>> = migrations,
  latest: number = latestSchema,
): Migrated {
  const from = schemaOf(saved);
  if (from === undefined) return { trouble: 'no-schema' };
  if (from > latest) return { trouble: 'newer', schema: from };
  let document = saved;
  for (let schema = from; schema < latest; schema += 1) {
    const step = steps[schema];
    if (step === undefined) return { trouble: 'no-way-up', schema: from };
    document = step(document);
  }
  return { document, from };
}

function schemaOf(saved: unknown): number | undefined {
  if (typeof saved !== 'object' || saved === null || !('schema' in saved)) return undefined;
  return Number.isInteger(saved.schema) ? (saved.schema as number) : undefined;
}
