// Sums over runs are minor units (pence) in BigInt, so means and variances are exact until formatted.
import { Big } from 'big.js';
import { decimalText, minorOf, type Coin } from './money.js';

/** Exact sums of a sample. */
export interface SampleSums {
  readonly runs: number;
  readonly sum: bigint;
  readonly squares: bigint;
}

/** @param values Whole numbers with their counts. */
export function sampleSums(values: Iterable<readonly [value: number, count: number]>): SampleSums {
  let runs = 0;
  let sum = 0n;
  let squares = 0n;
  for (const [value, count] of values) {
    const v = BigInt(value);
    const n = BigInt(count);
    runs += count;
    sum += v * n;
    squares += v * v * n;
  }
  return { runs, sum, squares };
}

/** The mean as decimal text, rounded once. */
export function meanText(sums: SampleSums, coin: Coin): string {
  const over = new Big(String(sums.sum)).div(new Big(10).pow(coin.decimals));
  return decimalText(minorOf(over, coin, sums.runs), coin);
}

/** Standard error of the mean in smallest coins: sqrt(sample variance / runs). 0 for a single run, which has no variance. */
export function standardError(sums: SampleSums): number {
  const n = BigInt(sums.runs);
  if (n < 2n) return 0;
  const over = n * sums.squares - sums.sum * sums.sum;
  // over / (n (n - 1)) is the sample variance; divide by n again for the mean.
  return Math.sqrt(Number(over) / Number(n * n * (n - 1n)));
}

/** A standard error as decimal text. It is an estimate, so ordinary rounding is enough. */
export function errorText(minor: number, coin: Coin): string {
  return decimalText(Math.round(minor), coin);
}
