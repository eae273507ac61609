import { decimalText, parseMoney, type Coin } from './money.js';
import { overrunOn } from './expected-cost.js';
import { errorText, meanText, sampleSums, standardError, type SampleSums } from './sample-sums.js';
import type { CostCurve } from './types.js';

/** A cost that does not hang on the overrun: the booking of a longer window, the hire of a second crane. */
export interface OptionCost {
  readonly what: string;
  /** Decimal text. */
  readonly amount: string;
  readonly source: string;
}

/** One way to do the work, already scheduled and simulated. */
export interface CostOption {
  readonly name: string;
  /** Minutes after the booked end at which each run hands back (0 or less: on time). The same seed everywhere: run i is the same luck in every option. */
  readonly overrunByRun: readonly number[];
  readonly curve: CostCurve;
  readonly fixed: readonly OptionCost[];
}

export type OptionVerdict =
  'the reference' | 'cheaper' | 'dearer' | 'the same' | 'too close to call';

export interface OptionResult {
  readonly name: string;
  readonly fixedCost: string;
  readonly expectedOverrunCost: string;
  readonly expectedTotal: string;
  readonly standardError: string;
  /** Expected total less that of the reference (the first option); negative: cheaper. */
  readonly difference: string;
  /** Standard error of the difference, run by run: far less than that of either total. */
  readonly differenceError: string;
  /** `too close to call`: the difference is within two of its standard errors. */
  readonly verdict: OptionVerdict;
  /** Share of runs in which it is cheaper than the reference. */
  readonly cheaperInShare: number;
  /**
   * The most its fixed costs may be before it is dearer than the reference on average. Null for the reference itself.
   * Negative: dearer even for nothing.
   */
  readonly worthUpTo: string | null;
  /** The least overrun of the reference that would cost at least this option's extra fixed costs. Null: never, or nothing extra is paid. */
  readonly breakEvenOverrunMinutes: number | null;
}

export interface Comparison {
  readonly currency: string;
  readonly runs: number;
  readonly options: readonly OptionResult[];
  /** The name of the option with the least expected total; the earlier listed of equals. */
  readonly cheapest: string;
  /** Options that cannot be told from the cheapest: within two standard errors of the difference, run by run. */
  readonly tied: readonly string[];
}

interface Sampled {
  readonly option: CostOption;
  readonly fixed: number;
  /** Total of each run in smallest coins. */
  readonly totals: readonly number[];
  readonly sums: SampleSums;
}

/**
 * Options side by side, each against the first.
 *
 * Runs are paired: run i of one option is held against run i of another, so luck that strikes both cancels.
 * @throws {RangeError} When there is no option, runs are not equally many, or currencies differ.
 */
export function compareOptions(options: readonly CostOption[]): Comparison {
  const first = options[0];
  if (!first) throw new RangeError('there is no option to compare');
  const coin = first.curve;
  const runs = first.overrunByRun.length;
  if (runs === 0) throw new RangeError(`option ${first.name} has no run`);
  for (const option of options) {
    if (option.overrunByRun.length !== runs)
      throw new RangeError(
        `option ${option.name} has ${option.overrunByRun.length} runs and ${first.name} has ${runs}: runs are compared in pairs`,
      );
    if (option.curve.currency !== coin.currency || option.curve.decimals !== coin.decimals)
      throw new RangeError(`option ${option.name} is not in ${coin.currency}`);
  }
  const sampled = options.map(sample);
  const reference = sampled[0]!;
  const cheapest = sampled.reduce((a, b) => (b.sums.sum < a.sums.sum ? b : a));
  return {
    currency: coin.currency,
    runs,
    options: sampled.map((one) => against(one, reference, coin)),
    cheapest: cheapest.option.name,
    tied: sampled
      .filter((one) => one !== cheapest)
      .filter((one) => {
        const verdict = verdictOf(differences(one, cheapest));
        return verdict === 'the same' || verdict === 'too close to call';
      })
      .map((one) => one.option.name),
  };
}

function sample(option: CostOption): Sampled {
  const fixed = option.fixed.reduce((sum, one) => sum + parseMoney(one.amount, option.curve), 0);
  const totals = option.overrunByRun.map(
    (minutes) => fixed + option.curve.minor[overrunOn(option.curve, minutes)]!,
  );
  return { option, fixed, totals, sums: sampleSums(totals.map((total) => [total, 1])) };
}

function differences(one: Sampled, other: Sampled): SampleSums {
  return sampleSums(one.totals.map((total, i) => [total - other.totals[i]!, 1]));
}

function verdictOf(difference: SampleSums): OptionVerdict {
  if (difference.sum === 0n && difference.squares === 0n) return 'the same';
  const mean = Number(difference.sum) / difference.runs;
  if (difference.runs < 2 || Math.abs(mean) <= 2 * standardError(difference))
    return 'too close to call';
  return mean < 0 ? 'cheaper' : 'dearer';
}

function against(one: Sampled, reference: Sampled, coin: Coin): OptionResult {
  const { option, fixed, sums } = one;
  const difference = differences(one, reference);
  const isReference = one === reference;
  const fixedInAll = BigInt(fixed) * BigInt(sums.runs);
  const extra = fixed - reference.fixed;
  const { minor } = reference.option.curve;
  const breakEven = extra > 0 ? minor.findIndex((cost) => cost >= extra) : -1;
  // What the reference costs on average beyond this option's overruns.
  const spared = { ...sums, sum: reference.sums.sum - (sums.sum - fixedInAll) };
  return {
    name: option.name,
    fixedCost: decimalText(fixed, coin),
    expectedOverrunCost: meanText({ ...sums, sum: sums.sum - fixedInAll }, coin),
    expectedTotal: meanText(sums, coin),
    standardError: errorText(standardError(sums), coin),
    difference: meanText(difference, coin),
    differenceError: errorText(standardError(difference), coin),
    verdict: isReference ? 'the reference' : verdictOf(difference),
    cheaperInShare:
      one.totals.filter((total, i) => total < reference.totals[i]!).length / sums.runs,
    worthUpTo: isReference ? null : meanText(spared, coin),
    breakEvenOverrunMinutes: breakEven < 0 ? null : breakEven,
  };
}
