import { problemsOf, type GivenTo, type Problem } from '../../model/index.js';
import type { TableProblems } from '../problems/index.js';

/** What is wrong with, or worth saying about, one cell. It becomes a `Fault` once file, line and column are known. */
export const problemOf = problemsOf<TableProblems>();

/** A value read from a cell, perhaps with something worth saying; or why there is none. */
export type Parsed<T> =
  | { readonly value: T; readonly warning?: Problem }
  | { readonly problem: Problem };

/** Reads the text of one cell, trimmed and not empty. */
export type Parser<T> = (text: string) => Parsed<T>;

/**
 * A parser that reads a text only the first time: many rows of a table say the same. What it gives is shared and must
 * not be changed.
 */
export function once<T>(parse: Parser<T>): Parser<T> {
  const known = new Map<string, Parsed<T>>();
  return (text) => {
    let parsed = known.get(text);
    if (!parsed) known.set(text, (parsed = parse(text)));
    return parsed;
  };
}

/** No value, and why. */
export const refuse = <K extends keyof TableProblems>(
  key: K,
  ...given: GivenTo<TableProblems[K]>
): { readonly problem: Problem } => ({ problem: problemOf(key, ...given) });

/** Cells longer than this are refused before a pattern is tried on them. */
export const longestCell = 10_000;

// Characters of ASCII with single spaces between: nothing below would change them.
const alreadyPlain = /^[!-~]+(?: [!-~]+)*$/;

/**
 * The text with unusual spaces, dashes and full-width characters made plain, for matching against patterns.
 * Never for names, which are kept as written.
 */
export function plain(text: string): string {
  if (alreadyPlain.test(text)) return text;
  return text
    .normalize('NFKC')
    .replace(/[\u2010-\u2015\u2212]/g, '-')
    .replace(/\s+/g, ' ')
    .trim();
}
