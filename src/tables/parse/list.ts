import { type Parsed, problemOf } from './parsed.js';

/** The parts of a `;`-separated cell, trimmed; empty parts are left out. */
export function partsOf(text: string): string[] {
  if (!text.includes(';') && !text.includes('\n')) {
    const only = text.trim();
    return only === '' ? [] : [only];
  }
  return text
    .split(/[;\n]/)
    .map((part) => part.trim())
    .filter((part) => part !== '');
}

/**
 * The list with an item at its end, the same list where it holds any. A list of one so has no room for more: tables
 * have very many of them, and what is pushed to an empty list makes room for seventeen.
 */
export function withItem<T>(list: T[], item: T): T[] {
  if (list.length === 0) return [item];
  list.push(item);
  return list;
}

/** Reads a `;`-separated list of names, each once. A comma does not separate: a name that holds one is told of. */
export function parseNames(text: string): Parsed<string[]> {
  const value = [...new Set(partsOf(text))];
  const withComma = value.find((name) => name.includes(','));
  if (withComma === undefined) return { value };
  return {
    value,
    warning: problemOf('comma-in-list', { withComma }),
  };
}
