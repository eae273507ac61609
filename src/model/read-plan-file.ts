// A plan file read: nothing of a bad one reaches the desk.
import type * as z from 'zod/mini';
import { isZone } from '../calendar/index.js';
import type { Fault } from './fault.js';
import type { Problem } from './sentence.js';
import { latestSchema, migrateDocument } from './migrate.js';
import { planDocumentSchema, type PlanDocument } from './plan-document.js';
import { planFileProblem } from './plan-file-problem.js';
import { mostTyped, tooLong } from './too-long.js';

/** What was found in a plan file: the document with what is worth saying, or the faults that keep it shut. */
export type ReadPlan =
  | { readonly document: PlanDocument; readonly notes: readonly string[] }
  | { readonly document?: undefined; readonly faults: readonly Fault[] };

const deepest = 40;
/** Names that reach an object's inner workings in some programs; no plan needs them. */
const refusedKeys = new Set(['__proto__', 'constructor', 'prototype']);

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
    return refused(file, planFileProblem('plan-not-json'));
  }
  const read = planFrom(saved, file);
  if (read.document === undefined) return read;
  const { tables: _, ...parts } = read.document;
  for (const [part, value] of Object.entries(parts)) {
    const length = tooLong(value);
    // Those with whom the plan is shared would refuse it.
    if (length !== undefined)
      return refused(file, planFileProblem('plan-text-too-long', { part, length, mostTyped }));
  }
  if (isZone(read.document.zone)) return read;
  return refused(file, planFileProblem('plan-zone-not-known', { zone: read.document.zone }));
}

/** A plan of parsed JSON: keys refused, brought up to the latest schema, checked. */
export function planFrom(saved: unknown, file = 'plan file'): ReadPlan {
  const key = refusedKeyIn(saved);
  if (key !== undefined) {
    return refused(file, planFileProblem('plan-key-refused', { key }));
  }
  let migrated;
  try {
    migrated = migrateDocument(saved);
  } catch {
    migrated = { trouble: 'no-way-up' as const };
  }
  if ('trouble' in migrated) return refused(file, problemWith(migrated.trouble, migrated.schema));
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

function refused(file: string, problem: Problem): ReadPlan {
  return { faults: [{ ...problem, severity: 'error', file }] };
}

function problemWith(
  trouble: 'no-schema' | 'newer' | 'no-way-up',
  schema: number | undefined,
): Problem {
  if (trouble === 'newer') return planFileProblem('plan-newer', { schema, latestSchema });
  return planFileProblem(trouble === 'no-schema' ? 'plan-schema-missing' : 'plan-no-way-up');
}

function issueFault(issue: z.core.$ZodIssue, file: string): Fault {
  const problem =
    issue.code === 'unrecognized_keys'
      ? planFileProblem('plan-entry-not-known', { names: issue.keys })
      : issue.code === 'invalid_type'
        ? planFileProblem('plan-entry-wrong/kind', { expected: issue.expected })
        : planFileProblem('plan-entry-wrong', { message: issue.message });
  const column = issue.path.length > 0 && { column: issue.path.map(String).join('.') };
  return { ...problem, severity: 'error', file, ...column };
}

/** The first key that is refused; what says so where the file is nested deeper than any plan. */
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
