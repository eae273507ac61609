import { headsOfCost } from '../../model/price-book.js';
import { decimalText, parseMoney, type Coin } from '../money.js';
import type { PriceResult } from '../types.js';
import type { Account, AccountRow } from './types.js';

type Totals = Pick<
  Account,
  'total' | 'evidenced' | 'notEvidenced' | 'notCounted' | 'claimants' | 'heads'
>;

/** Totals of an account. Each sums rounded rows, so they agree to the penny. */
export function accountTotals(
  rows: readonly AccountRow[],
  coin: Coin,
  forecast: PriceResult | undefined,
): Totals {
  const sum = (some: readonly { readonly amount: string }[]): string =>
    decimalText(
      some.reduce((total, row) => total + parseMoney(row.amount, coin), 0),
      coin,
    );
  const counted = rows.filter((row) => row.counted);
  const names = [...new Set(counted.map((row) => row.claimedBy))].sort((a, b) => (a < b ? -1 : 1));
  const forecastRows = forecast?.rows.filter((row) => row.counted) ?? [];
  const heads = headsOfCost.filter((head) =>
    [...counted, ...forecastRows].some((row) => row.head === head),
  );
  return {
    total: sum(counted),
    evidenced: sum(counted.filter((row) => row.evidenced)),
    notEvidenced: sum(counted.filter((row) => !row.evidenced)),
    notCounted: sum(rows.filter((row) => !row.counted)),
    claimants: names.map((claimedBy) => ({
      claimedBy,
      amount: sum(counted.filter((row) => row.claimedBy === claimedBy)),
    })),
    heads: heads.map((head) => ({
      head,
      amount: sum(counted.filter((row) => row.head === head)),
      forecast: forecast ? sum(forecastRows.filter((row) => row.head === head)) : null,
    })),
  };
}
