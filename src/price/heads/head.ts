import type { Instant } from '../../calendar/index.js';
import type { AccessWindow, Train, Worded } from '../../model/index.js';
import type { HeadOfCost, PriceBook } from '../../model/price-book.js';
import type { CostStep, PriceInput, PriceRow } from '../types.js';

/** A step without the fields that all steps of one head share. */
export type HeadStep = Pick<CostStep, 'atMinute' | 'kind'> & { readonly name: Worded };

/**
 * A source of cost as a function of the overrun in whole minutes. A curve calls `minorAt` for every minute, so text is
 * made separately and only on request.
 */
export interface CostHead {
  readonly head: HeadOfCost;
  readonly code: string;
  readonly title: Worded;
  readonly source: string;
  /** Minor units (pence), rounded once. */
  minorAt(overrun: number): number;
  explainAt(overrun: number): { readonly formula: string; readonly inputs: readonly PriceInput[] };
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
  readonly note: (text: string) => void;
  /** Collects items without a price, each from a given overrun on (0: at any). */
  readonly notPriced: (text: string, fromMinute?: number) => void;
  /** Handback time after an overrun. */
  readonly handback: (overrun: number) => Instant;
}

export const input = (name: string, value: string | number, unit = ''): PriceInput => ({
  name,
  value: String(value),
  unit,
});

/** The title fields of a head's rows. */
export const titleOf = ({
  title,
}: Pick<CostHead, 'title'>): Pick<PriceRow, 'title' | 'titled'> => ({
  title: title.text,
  ...(title.sentence && { titled: title.sentence }),
});
