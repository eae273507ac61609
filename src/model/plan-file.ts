// The plan as a file: the same text for the same plan.
import type { PlanDocument } from './plan-document.js';

/** Keys that come first in the file, as people read them first; all others follow by name. */
const firstKeys = ['schema', 'name', 'zone', 'file', 'columns', 'rows'];

/**
 * The text of a plan file: JSON, keys always in the same order, one table row a line, so that two plans can be
 * compared line by line.
 */
export function planFile(document: PlanDocument): string {
  return `${written(document, '')}\n`;
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
