import type { faultSentences } from './english/index.js';
import type { Sentence } from './plan-types.js';

type Catalogue = typeof faultSentences;
type Given<F extends (...all: never) => unknown> =
  Parameters<F> extends readonly [infer G, ...unknown[]] ? [given: G] : [];

/** What a fault is, as a sentence of the catalogue of this room; its words are those of whoever shows it. */
export const say = <K extends keyof Catalogue>(
  key: K,
  ...given: Given<Catalogue[K]>
): Sentence => ({ key, given: given[0] ?? {} });
