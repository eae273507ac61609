import { percentOfShare } from './account/claims.js';
import type { Account } from './account/types.js';
import type { PriceResult } from './types.js';

/** Columns and rows of text, ready for any writer of tables. Rows are as long as `columns`. */
export interface PlainTable {
  readonly columns: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

const yes = (is: boolean): string => (is ? 'yes' : 'no');

/** The rows of a priced overrun, in their order; the total is left to the reader of the table. */
export function priceTable(result: PriceResult): PlainTable {
  return {
    columns: ['head', 'code', 'what', 'amount', 'currency', 'counted', 'how', 'source'],
    rows: result.rows.map((row) => [
      row.head,
      row.code,
      row.title,
      row.amount,
      result.currency,
      yes(row.counted),
      row.formula,
      row.source,
    ]),
  };
}

/** The rows of an account, in their order. */
export function accountTable(account: Account): PlainTable {
  return {
    columns: [
      'head',
      'code',
      'what',
      'amount',
      'currency',
      'counted',
      'basis',
      'claimed by',
      'our share, per cent',
      'evidenced',
      'evidence',
      'how',
      'source',
    ],
    rows: account.rows.map((row) => [
      row.head,
      row.code,
      row.what,
      row.amount,
      account.currency,
      yes(row.counted),
      row.basis,
      row.claimedBy,
      percentOfShare(row.share),
      yes(row.evidenced),
      row.evidence,
      row.formula,
      row.source,
    ]),
  };
}
