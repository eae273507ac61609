// The plan as a file: the same text for the same plan, and nothing of a bad file reaches the desk.
import type * as z from 'zod/mini';
import { isZone } from '../calendar/index.js';
import type { Fault } from './fault.js';
import { latestSchema, migrateDocument } from './migrate.js';
import { planDocumentSchema, type PlanDocument } from './plan-document.js';
import { mostTyped, tooLong } from './too-long.js';

/** What was found in a plan file: the document with what is worth saying, or the faults that keep it shut. */
export type ReadPlan =
  | { readonly document: PlanDocument; readonly notes: readonly string[] }
  | { readonly document?: undefined; readonly faults: readonly Fault[] };

const deepest = 40;
/** Names that reach an object's inner workings in some programs; no plan needs them. */
const refusedKeys = new Set(['__proto__', 'constructor', 'prototype']);

/** Keys that come first in the file, as people read them first; all others follow by name. */
const firstKeys = ['schema', 'name', 'zone', 'file', 'columns', 'rows'];

/**
 * The text of a plan file: JSON, keys always in the same order, one table row a line, so that two plans can be
 * compared line by line.
 */
export function planFile(document: PlanDocument): string {
  return `${written(document, '')}\n`;
}

/**
 * Reads a plan file of this or an earlier schema.
 *
 * `file` names it in faults. Never throws for bad text.
 */
export function readPlanFile(text: string, file = 'plan file'): ReadPlan {
  let saved: unknown;
  try {
    saved = JSON.parse(text.replace(/^\uFEFF/, ''));
  } catch {
    return refused(file, {
      code: 'plan-not-json',
      message: 'The text is not a plan file, or part of it is missing.',
      mend: 'Choose a file that was saved as a plan. If it came by mail, ask for it again.',
    });
  }
  const read = planFrom(saved, file);
  if (read.document === undefined) return read;
  const { tables: _, ...parts } = read.document;
  for (const [part, value] of Object.entries(parts)) {
    const length = tooLong(value);
    // Those with whom the plan is shared would refuse it.
    if (length !== undefined)
      return refused(file, {
        code: 'plan-text-too-long',
        message: `Under "${part}" stands a text of ${length} characters; at most ${mostTyped} are taken.`,
        mend: 'Shorten it in the file, or ask for the plan again.',
      });
  }
  if (isZone(read.document.zone)) return read;
  return refused(file, {
    code: 'plan-zone-not-known',
    message: `The plan's times are those of "${read.document.zone}", which is no time zone.`,
    mend: 'Ask for the plan again, or write a zone such as Europe/London under "zone".',
  });
}

/** A plan of parsed JSON: keys refused, brought up to the latest schema, checked. */
export function planFrom(saved: unknown, file = 'plan file'): ReadPlan {
  const key = refusedKeyIn(saved);
  if (key !== undefined) {
    return refused(file, {
      code: 'plan-key-refused',
      message: `The file has an entry named "${key}", which is not accepted.`,
      mend: 'Take it out, or ask where the file comes from.',
    });
  }
  let migrated;
  try {
    migrated = migrateDocument(saved);
  } catch {
    migrated = { trouble: 'no-way-up' as const };
  }
  if ('trouble' in migrated) return refused(file, wordsOf(migrated.trouble, migrated.schema));
  const checked = planDocumentSchema.safeParse(migrated.document);
  if (!checked.success) {
    const faults = checked.error.issues.slice(0, 20).map((issue) => issueFault(issue, file));
    return { faults };
  }
  const notes =
    migrated.from === latestSchema
      ? []
      : [
          `The file was written by an earlier version (${migrated.from}) and was brought up to date.`,
        ];
  return { document: checked.data, notes };
}

type Words = Pick<Fault, 'code' | 'message' | 'mend'>;

function refused(file: string, words: Words): ReadPlan {
  return { faults: [{ severity: 'error', file, ...words }] };
}

function wordsOf(trouble: 'no-schema' | 'newer' | 'no-way-up', schema: number | undefined): Words {
  if (trouble === 'newer') {
    return {
      code: 'plan-newer',
      message: `The plan was saved by a newer version (plan version ${schema}; this page reads up to ${latestSchema}). Nothing was changed.`,
      mend: 'Reload the page to get the newer version, or ask for the tables as CSV files.',
    };
  }
  if (trouble === 'no-schema') {
    return {
      code: 'plan-schema-missing',
      message: 'The file does not say which version of a plan it is.',
      mend: 'Choose a file that was saved as a plan.',
    };
  }
  return {
    code: 'plan-no-way-up',
    message: 'The plan is of a version that cannot be read any more.',
    mend: 'Open it with the version that wrote it and save its tables as CSV files.',
  };
}

function issueFault(issue: z.core.$ZodIssue, file: string): Fault {
  const unknown = issue.code === 'unrecognized_keys' ? issue.keys.join(', ') : undefined;
  const expected = issue.code === 'invalid_type' ? issue.expected : undefined;
  return {
    code: unknown === undefined ? 'plan-entry-wrong' : 'plan-entry-not-known',
    severity: 'error',
    file,
    ...(issue.path.length > 0 && { column: issue.path.map(String).join('.') }),
    message:
      unknown !== undefined
        ? `There is an entry that no plan has: ${unknown}.`
        : expected !== undefined
          ? `A ${expected} is expected here.`
          : `What stands here is not what a plan holds (${issue.message}).`,
    mend: 'Choose a file that was saved as a plan and not changed by hand, or correct this entry.',
  };
}

/** The first key that is refused; words that say so where the file is nested deeper than any plan. */
function refusedKeyIn(value: unknown, depth = 0): string | undefined {
  if (typeof value !== 'object' || value === null) return undefined;
  if (depth > deepest) return 'nested too deep';
  if (Array.isArray(value)) {
    for (const item of value) {
      const found = typeof item === 'object' ? refusedKeyIn(item, depth + 1) : undefined;
      if (found !== undefined) return found;
    }
    return undefined;
  }
  for (const [key, item] of Object.entries(value)) {
    const found = refusedKeys.has(key) ? key : refusedKeyIn(item, depth + 1);
    if (found !== undefined) return found;
  }
  return undefined;
}

function written(value: unknown, indent: string): string {
  if (typeof value !== 'object' || value === null) return JSON.stringify(value);
  const inner = `${indent}  `;
  if (Array.isArray(value)) {
    if (value.length === 0) return '[]';
    if (value.every((item) => typeof item !== 'object' || item === null))
      return JSON.stringify(value);
    return `[\n${value.map((item) => inner + written(item, inner)).join(',\n')}\n${indent}]`;
  }
  const entries = Object.entries(value).filter(([, item]) => item !== undefined);
  if (entries.length === 0) return '{}';
  entries.sort(([a], [b]) => rank(a) - rank(b) || (a < b ? -1 : 1));
  const lines = entries.map(
    ([key, item]) => `${inner}${JSON.stringify(key)}: ${written(item, inner)}`,
  );
  return `{\n${lines.join(',\n')}\n${indent}}`;
}

function rank(key: string): number {
  const place = firstKeys.indexOf(key);
  return place < 0 ? firstKeys.length : place;
}
