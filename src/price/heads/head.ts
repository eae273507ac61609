import type { Instant } from '../../calendar/index.js';
import type { AccessWindow, Train, Worded } from '../../model/index.js';
import type { HeadOfCost, PriceBook } from '../../model/price-book.js';
import type { CostStep, PriceInput, PriceRow } from '../types.js';

/** A head's steps leave out what every step of it shares. */
export type HeadStep = Pick<CostStep, 'atMinute' | 'kind'> & { readonly name: Worded };

/**
 * One source of cost as a function of the overrun in whole minutes. `minorAt` is called for every minute of a
 * curve, so words are made only when asked for.
 */
export interface CostHead {
  readonly head: HeadOfCost;
  readonly code: string;
  readonly title: Worded;
  readonly source: string;
  /** Smallest coins, rounded once. */
  minorAt(overrun: number): number;
  explainAt(overrun: number): { readonly formula: string; readonly inputs: readonly PriceInput[] };
  /** The minutes from 1 to `max` at which this head jumps or changes slope. */
  stepsTo(max: number): readonly HeadStep[];
}

/** What every head is compiled from. */
export interface HeadContext {
  readonly window: AccessWindow;
  readonly book: PriceBook;
  /** Trains the window's handback can hold, in order due. */
  readonly trains: readonly Train[];
  /** Local dates of public holidays. */
  readonly holidays: readonly string[];
  /** The largest overrun that will be asked for. */
  readonly maxMinutes: number;
  /** Collects what was assumed. */
  readonly note: (text: string) => void;
  /** Collects what has no price here, from an overrun of so many minutes on (0: at any). */
  readonly notPriced: (text: string, fromMinute?: number) => void;
  /** When the line is given back after an overrun. */
  readonly handback: (overrun: number) => Instant;
}

export const input = (name: string, value: string | number, unit = ''): PriceInput => ({
  name,
  value: String(value),
  unit,
});

/** The title of a head as its rows have it. */
export const titleOf = ({
  title,
}: Pick<CostHead, 'title'>): Pick<PriceRow, 'title' | 'titled'> => ({
  title: title.text,
  ...(title.sentence && { titled: title.sentence }),
});
