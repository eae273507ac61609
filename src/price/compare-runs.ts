import { type Coin } from './money.js';
import { errorText, meanText, sampleSums, standardError, type SampleSums } from './sample-sums.js';

/** Cost of one option per run, in minor units (pence). */
export interface RunCosts {
  /** The part that varies from run to run; whole numbers. */
  readonly varying: readonly number[];
  /** The part paid in every run. */
  readonly fixed: number;
}

export type OptionVerdict =
  | 'the reference'
  | 'cheaper'
  | 'dearer'
  | 'the same'
  | 'too close to call';

/** One option compared with the first; money as decimal text. */
export interface RunComparison {
  readonly expectedVarying: string;
  readonly expectedTotal: string;
  readonly standardError: string;
  /** Expected total minus that of the reference. Negative: cheaper. */
  readonly difference: string;
  readonly differenceError: string;
  readonly verdict: OptionVerdict;
  readonly cheaperInShare: number;
  /** Fixed costs at which it is no longer cheaper than the reference. Null for the reference. */
  readonly worthUpTo: string | null;
}

/**
 * Compares each option with the first, run by run, so random draws that hit both cancel out.
 * @throws {RangeError} When there are no options, one has no runs, or their numbers of runs differ.
 */
export function compareWithReference(
  all: readonly RunCosts[],
  coin: Coin,
): readonly RunComparison[] {
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
      // Mean cost of the reference minus the varying cost of this option.
      worthUpTo:
        item === reference
          ? null
          : meanText({ ...sums, sum: ofReference.sum - (sums.sum - fixed) }, coin),
    };
  });
}

/** Compares two options; a difference within two standard errors is too close to call. */
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
