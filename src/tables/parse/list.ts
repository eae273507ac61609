import { type Parsed, problemOf } from './parsed.js';

/** The parts of a `;`-separated cell, trimmed; empty parts are left out. */
export function partsOf(text: string): string[] {
  return text
    .split(/[;\n]/)
    .map((part) => part.trim())
    .filter((part) => part !== '');
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
