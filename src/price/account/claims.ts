import { Big } from 'big.js';
import { exactOf, minorOf, type Coin } from '../money.js';
import type { AccountRow, Claim } from './types.js';

/** The claim fields of a row. */
export function claimOf(
  claim: Claim | undefined,
): Pick<AccountRow, 'claimedBy' | 'share' | 'evidence' | 'evidenced'> {
  const evidence = claim?.evidence?.trim() ?? '';
  const share = shareOf(claim).toFixed();
  return { claimedBy: claim?.claimedBy ?? '', share, evidence, evidenced: evidence !== '' };
}

/** A claim's share of an amount, checked to be between 0 and 1. */
export function shareOf(claim: Claim | undefined): Big {
  const share = exactOf(claim?.share ?? '1');
  if (share.lt(0) || share.gt(1))
    throw new RangeError(`a share is from 0 to 1, not ${claim?.share ?? ''}`);
  return share;
}

/** Our share in per cent; null where it is all. */
export function sharePercent(claim: Claim | undefined): string | null {
  const share = shareOf(claim).toFixed();
  return share === '1' ? null : percentOfShare(share);
}

/** `0.3333` as a percentage: `33.33`. */
export const percentOfShare = (share: string): string => exactOf(share).times(100).toFixed();

/**
 * A percentage as it is typed (`33.33`, `12,5`, `40 %`), as a share; `undefined` unless it is between 0 and 100 with at
 * most six decimals.
 */
export function shareOfPercent(text: string): string | undefined {
  const plain = text.trim().replace(/%$/, '').trimEnd().replace(',', '.');
  if (!/^\d{1,3}(\.\d{1,6})?$/.test(plain)) return undefined;
  const percent = exactOf(plain);
  return percent.gt(100) ? undefined : percent.div(100).toFixed();
}

/** A claim's share of an amount in minor units (pence). */
export function ourShare(minor: number, claim: Claim | undefined, coin: Coin): number {
  const whole = new Big(minor).div(new Big(10).pow(coin.decimals));
  return minorOf(whole.times(shareOf(claim)), coin);
}
