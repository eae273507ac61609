// Reading our own JSON files: what is wrong is told with the place in the document as the column.
import * as z from 'zod/mini';
import type { Fault, Problem } from '../../model/index.js';
import { scanJson } from './json-scan.js';
import { jsonProblem, problemIn, type JsonIssue } from './json-issues.js';

/** What a file of ours is about; it begins the codes of its faults. */
export type JsonSubject = 'rules' | 'prices' | 'booking' | 'site' | 'decisions' | 'risk';

/** Names that reach an object's inner workings in some programs; no rule needs them. */
const refusedKeys = new Set(['__proto__', 'constructor', 'prototype']);

/**
 * Reads a JSON file against its schema. A fault's `column` is the place in the document, such as `leadIn[0].minutes`.
 * `value` is absent when there is an error.
 */
export function jsonFrom<T extends z.core.$ZodType>(
  text: string,
  file: string,
  subject: JsonSubject,
  schema: T,
): { readonly value?: z.output<T>; readonly faults: readonly Fault[] } {
  const parsed = parseJson(text.replace(/^\uFEFF/, ''), subject);
  if ('problem' in parsed) {
    const { line, problem } = parsed;
    return { faults: [{ ...problem, severity: 'error', file, line }] };
  }
  const checked = z.safeParse(schema, parsed.value);
  if (checked.success) return { value: checked.data, faults: [] };
  return {
    faults: checked.error.issues.flatMap((issue) =>
      issueFaults(issue, parsed.value, file, subject),
    ),
  };
}

type ParsedJson = { value: unknown } | { problem: Problem; line: number };

function parseJson(text: string, subject: JsonSubject): ParsedJson {
  const lineAt = (at: number): number => text.slice(0, at).split(/\r\n|\r|\n/).length;
  const { brokenAt, twice } = scanJson(text);
  if (brokenAt !== undefined) {
    const found = text.slice(brokenAt, brokenAt + 12);
    const problem = jsonProblem(subject, 'not-json', { found });
    return { problem, line: lineAt(brokenAt) };
  }
  if (twice) {
    const problem = jsonProblem(subject, 'entry-twice', { key: twice.key });
    return { problem, line: lineAt(twice.at) };
  }
  let refused: string | undefined;
  const value: unknown = JSON.parse(text, (key, item: unknown) => {
    if (refusedKeys.has(key)) refused ??= key;
    return item;
  });
  if (refused === undefined) return { value };
  const problem = jsonProblem(subject, 'key-refused', { key: refused });
  return { problem, line: lineAt(text.indexOf(`"${refused}"`)) };
}

function issueFaults(raw: object, document: unknown, file: string, subject: JsonSubject): Fault[] {
  const issue = raw as JsonIssue;
  const inside = insideShape(issue, valueAt(document, issue.path));
  if (inside.length > 0)
    return inside.flatMap((item) => issueFaults(item, document, file, subject));
  if (issue.code === 'unrecognized_keys') {
    return (issue.keys ?? []).map((key) =>
      faultIn(
        [...issue.path, key],
        document,
        file,
        jsonProblem(subject, 'entry-not-known', { key }),
      ),
    );
  }
  return [
    faultIn(issue.path, document, file, problemIn(issue, valueAt(document, issue.path), subject)),
  ];
}

/** Where a group of entries is one of several shapes that would do, what is wrong inside the shape that is a group too. */
function insideShape(issue: JsonIssue, value: unknown): readonly JsonIssue[] {
  if (issue.code !== 'invalid_union' || issue.options) return [];
  if (typeof value !== 'object' || value === null) return [];
  const meant = (issue.errors ?? []).find((error) =>
    error.every((each) => each.path.length > 0 || each.code === 'unrecognized_keys'),
  );
  return (meant ?? []).map((item) => ({ ...item, path: [...issue.path, ...item.path] }));
}

function faultIn(
  path: readonly PropertyKey[],
  document: unknown,
  file: string,
  problem: Problem,
): Fault {
  const value = valueAt(document, path);
  const shown = value === undefined ? {} : { value: JSON.stringify(value).slice(0, 200) };
  const column = path.length === 0 ? {} : ({ column: pathText(path), entry: true } as const);
  return { ...problem, severity: 'error', file, ...column, ...shown };
}

function pathText(path: readonly PropertyKey[]): string {
  return path
    .map((part, index) =>
      typeof part === 'number' ? `[${part}]` : `${index > 0 ? '.' : ''}${String(part)}`,
    )
    .join('');
}

function valueAt(document: unknown, path: readonly PropertyKey[]): unknown {
  let at = document;
  for (const part of path) {
    if (typeof at !== 'object' || at === null || !Object.hasOwn(at, part)) return undefined;
    at = (at as Record<PropertyKey, unknown>)[part];
  }
  return at;
}
