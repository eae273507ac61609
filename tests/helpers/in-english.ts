import { english } from '../../src/engine/english/say.js';
import type { Problem, Sentence } from '../../src/model/index.js';

/** A value with English texts in place of its sentences. */
export type InEnglish<T> = T extends Sentence
  ? string
  : T extends Problem
    ? Problem extends T
      ? string
      : { readonly [K in keyof T]: InEnglish<T[K]> }
    : T extends readonly (infer E)[]
      ? readonly InEnglish<E>[]
      : T extends object
        ? { readonly [K in keyof T]: InEnglish<T[K]> }
        : T;

/** Says all sentences of a value in English, so that a test can read them. */
export function inEnglish<T>(value: T): InEnglish<T> {
  return spoken(value) as InEnglish<T>;
}

function spoken(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(spoken);
  if (typeof value !== 'object' || value === null) return value;
  if ('key' in value && 'given' in value) return english(value as Sentence);
  return Object.fromEntries(Object.entries(value).map(([key, part]) => [key, spoken(part)]));
}
