import type { Rate } from '../../model/price-book.js';

/** A sum of money: decimal text in a currency. */
export interface SumOf {
  readonly amount: string;
  readonly currency: string;
}

/** A rate in a currency. */
export type RateOf = Rate & Pick<SumOf, 'currency'>;

/** `GBP 8130.15`. */
export const sumText = ({ amount, currency }: SumOf): string => `${currency} ${amount}`;

/** `GBP 71.43 a minute`. */
export function rateText({ perMinutes, ...sum }: RateOf): string {
  const per =
    perMinutes === 1 ? 'a minute' : perMinutes === 60 ? 'an hour' : `per ${perMinutes} minutes`;
  return `${sumText(sum)} ${per}`;
}
