import { type Coin } from './money.js';
import { errorText, meanText, sampleSums, standardError, type SampleSums } from './sample-sums.js';

/** What one way to do the work costs, run by run, in smallest coins. */
export interface RunCosts {
  /** What hangs on the luck of each run: whole numbers. */
  readonly varying: readonly number[];
  /** What is paid whatever happens. */
  readonly fixed: number;
}

export type OptionVerdict =
  | 'the reference'
  | 'cheaper'
  | 'dearer'
  | 'the same'
  | 'too close to call';

/** One way held against the first, in decimal text. */
export interface RunComparison {
  readonly expectedVarying: string;
  readonly expectedTotal: string;
  readonly standardError: string;
  /** Expected total less that of the reference; negative: cheaper. */
  readonly difference: string;
  readonly differenceError: string;
  readonly verdict: OptionVerdict;
  readonly cheaperInShare: number;
  /** The most its fixed costs may be before it is dearer than the reference. Null for the reference itself. */
  readonly worthUpTo: string | null;
}

/**
 * Each against the first, run by run: luck that strikes both cancels.
 * @throws {RangeError} When there is none, one has no run, or runs are not equally many.
 */
export function againstReference(all: readonly RunCosts[], coin: Coin): readonly RunComparison[] {
  const reference = all[0];
  if (!reference || reference.varying.length === 0) throw new RangeError('there is no run');
  const runs = BigInt(reference.varying.length);
  const ofReference = totalsOf(reference);
  return all.map((item): RunComparison => {
    if (item.varying.length !== reference.varying.length)
      throw new RangeError(
        `${item.varying.length} runs cannot be paired with ${reference.varying.length}`,
      );
    const sums = totalsOf(item);
    const fixed = BigInt(item.fixed) * runs;
    const difference = differenceOf(item, reference);
    return {
      expectedVarying: meanText({ ...sums, sum: sums.sum - fixed }, coin),
      expectedTotal: meanText(sums, coin),
      standardError: errorText(standardError(sums), coin),
      difference: meanText(difference, coin),
      differenceError: errorText(standardError(difference), coin),
      verdict: item === reference ? 'the reference' : verdictOf(difference),
      cheaperInShare:
        item.varying.filter(
          (cost, i) => cost + item.fixed < reference.varying[i]! + reference.fixed,
        ).length / item.varying.length,
      // What the reference costs on average beyond what varies here.
      worthUpTo:
        item === reference
          ? null
          : meanText({ ...sums, sum: ofReference.sum - (sums.sum - fixed) }, coin),
    };
  });
}

/** How one stands against another: within two standard errors of the difference it is too close to call. */
export function verdictBetween(item: RunCosts, other: RunCosts): OptionVerdict {
  return verdictOf(differenceOf(item, other));
}

function totalsOf(item: RunCosts): SampleSums {
  return sampleSums(item.varying.map((cost) => [cost + item.fixed, 1]));
}

function differenceOf(item: RunCosts, other: RunCosts): SampleSums {
  return sampleSums(
    item.varying.map((cost, i) => [cost + item.fixed - other.varying[i]! - other.fixed, 1]),
  );
}

function verdictOf(difference: SampleSums): OptionVerdict {
  if (difference.sum === 0n && difference.squares === 0n) return 'the same';
  const mean = Number(difference.sum) / difference.runs;
  if (difference.runs < 2 || Math.abs(mean) <= 2 * standardError(difference))
    return 'too close to call';
  return mean < 0 ? 'cheaper' : 'dearer';
}
