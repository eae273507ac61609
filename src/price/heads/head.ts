import type { Instant } from '../../calendar/index.js';
import type { AccessWindow, Phrase, Sentence, Train } from '../../model/index.js';
import type { HeadOfCost, PriceBook } from '../../model/price-book.js';
import type { inputSentences } from '../english/input-sentences.js';
import { sayPrice } from '../say-price.js';
import type { CostStep, PriceInput } from '../types.js';

/** A step without the fields that all steps of one head share. */
export type HeadStep = Pick<CostStep, 'atMinute' | 'kind' | 'name'>;

/**
 * A source of cost as a function of the overrun in whole minutes. A curve calls `minorAt` for every minute, so text is
 * made separately and only on request.
 */
export interface CostHead {
  readonly head: HeadOfCost;
  readonly code: string;
  readonly title: Phrase;
  readonly source: Phrase;
  /** Minor units (pence), rounded once. */
  minorAt(overrun: number): number;
  explainAt(overrun: number): { readonly formula: Phrase; readonly inputs: readonly PriceInput[] };
  /** The minutes from 1 to `max` at which this head jumps or changes slope. */
  stepsTo(max: number): readonly HeadStep[];
}

/** Inputs of every head. */
export interface HeadContext {
  readonly window: AccessWindow;
  readonly book: PriceBook;
  /** Trains that a late handback can hold, by due time. */
  readonly trains: readonly Train[];
  /** Local dates of public holidays. */
  readonly holidays: readonly string[];
  /** The largest overrun that will be priced. */
  readonly maxMinutes: number;
  /** Collects assumptions. */
  readonly note: (text: Phrase) => void;
  /** Collects items without a price, each from a given overrun on (0: at any). */
  readonly notPriced: (text: Phrase, fromMinute?: number) => void;
  /** Handback time after an overrun. */
  readonly handback: (overrun: number) => Instant;
}

/** A number with the name that says what it is; a name with a number of its own is a sentence already. */
export const input = (
  name: PlainInput | Sentence,
  value: string | number | Sentence,
  unit: Phrase = '',
): PriceInput => ({
  name: typeof name === 'string' ? sayPrice(name) : name,
  value: typeof value === 'number' ? String(value) : value,
  unit,
});

type Inputs = typeof inputSentences;
type PlainInput = {
  [K in keyof Inputs]: Parameters<Inputs[K]>['length'] extends 0 ? K : never;
}[keyof Inputs];
