import { Big } from 'big.js';
import { exactOf, minorOf, type Coin } from '../money.js';
import type { AccountRow, Claim } from './types.js';

/** The claim on a row, in the row's words. */
export function claimOf(
  claim: Claim | undefined,
): Pick<AccountRow, 'claimedBy' | 'evidence' | 'evidenced'> {
  const evidence = claim?.evidence?.trim() ?? '';
  return { claimedBy: claim?.claimedBy ?? '', evidence, evidenced: evidence !== '' };
}

/** A claim's part of a sum, checked to be from 0 to 1. */
export function shareOf(claim: Claim | undefined): Big {
  const share = exactOf(claim?.share ?? '1');
  if (share.lt(0) || share.gt(1))
    throw new RangeError(`a share is from 0 to 1, not ${claim?.share ?? ''}`);
  return share;
}

export function shareWords(claim: Claim | undefined): string {
  return claim?.share === undefined ? '' : `, of which our share of ${claim.share}`;
}

/** A claim's part of a sum that is already in whole coins. */
export function shared(minor: number, claim: Claim | undefined, coin: Coin): number {
  const whole = new Big(minor).div(new Big(10).pow(coin.decimals));
  return minorOf(whole.times(shareOf(claim)), coin);
}
