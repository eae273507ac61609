import {
  compareWithReference,
  verdictBetween,
  type OptionVerdict,
  type RunCosts,
} from './compare-runs.js';
import { overrunOn } from './expected-cost.js';
import { decimalText, parseMoney } from './money.js';
import type { CostCurve } from './types.js';

/** A cost that does not depend on the overrun, such as booking a longer window or hiring a second crane. */
export interface OptionCost {
  readonly what: string;
  /** Decimal text. */
  readonly amount: string;
  readonly source: string;
}

/** One way to do the work, already scheduled and simulated. */
export interface CostOption {
  readonly name: string;
  /**
   * Minutes after the booked end at which each run hands back (0 or less: on time). All options use one seed, so run i
   * has the same random draws in each.
   */
  readonly overrunByRun: readonly number[];
  readonly curve: CostCurve;
  readonly fixed: readonly OptionCost[];
  /** Other costs of each run, such as the overrun of another window, in minor units (pence). Absent: none. */
  readonly alsoByRun?: readonly number[];
}

export interface OptionResult {
  readonly name: string;
  readonly fixedCost: string;
  readonly expectedOverrunCost: string;
  readonly expectedTotal: string;
  readonly standardError: string;
  /** Expected total minus that of the reference (the first option). Negative: cheaper. */
  readonly difference: string;
  /** Standard error of the paired difference: far smaller than that of either total. */
  readonly differenceError: string;
  /** `too close to call`: the difference is within two of its standard errors. */
  readonly verdict: OptionVerdict;
  /** Fraction of runs in which it is cheaper than the reference. */
  readonly cheaperInShare: number;
  /**
   * Fixed costs at which it is no longer cheaper than the reference on average. Null for the reference. Negative:
   * dearer even with no fixed costs.
   */
  readonly worthUpTo: string | null;
  /** The least overrun of the reference that would cost at least this option's extra fixed costs. Null: never, or nothing extra is paid. */
  readonly breakEvenOverrunMinutes: number | null;
}

export interface Comparison {
  readonly currency: string;
  readonly runs: number;
  readonly options: readonly OptionResult[];
  /** Name of the option with the lowest expected total. Of equal ones, the first listed. */
  readonly cheapest: string;
  /** Options whose paired difference from the cheapest is within two standard errors. */
  readonly tied: readonly string[];
}

/**
 * Compares each option with the first.
 *
 * Runs are paired: run i of one option is compared with run i of another, so random draws that hit both cancel out.
 * @throws {RangeError} When there are no options, or their numbers of runs or currencies differ.
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
  const costs = options.map(costsOf);
  const compared = compareWithReference(costs, coin);
  const reference = costs[0]!;
  return {
    currency: coin.currency,
    runs,
    options: options.map((option, i): OptionResult => {
      const extra = costs[i]!.fixed - reference.fixed;
      const breakEven = extra > 0 ? first.curve.minor.findIndex((cost) => cost >= extra) : -1;
      const { expectedVarying, ...result } = compared[i]!;
      return {
        name: option.name,
        fixedCost: decimalText(costs[i]!.fixed, coin),
        expectedOverrunCost: expectedVarying,
        ...result,
        breakEvenOverrunMinutes: breakEven < 0 ? null : breakEven,
      };
    }),
    ...cheapestOf(options, costs),
  };
}

function costsOf(option: CostOption): RunCosts {
  return {
    varying: option.overrunByRun.map(
      (minutes, i) =>
        option.curve.minor[overrunOn(option.curve, minutes)]! + (option.alsoByRun?.[i] ?? 0),
    ),
    fixed: option.fixed.reduce((sum, cost) => sum + parseMoney(cost.amount, option.curve), 0),
  };
}

function cheapestOf(
  options: readonly CostOption[],
  costs: readonly RunCosts[],
): Pick<Comparison, 'cheapest' | 'tied'> {
  const totals = costs.map(
    (item) =>
      item.varying.reduce((sum, cost) => sum + BigInt(cost), 0n) +
      BigInt(item.fixed) * BigInt(item.varying.length),
  );
  const best = totals.reduce((at, total, i) => (total < totals[at]! ? i : at), 0);
  return {
    cheapest: options[best]!.name,
    tied: options
      .filter((_, i) => i !== best)
      .filter((option) => {
        const verdict = verdictBetween(costs[options.indexOf(option)]!, costs[best]!);
        return verdict === 'the same' || verdict === 'too close to call';
      })
      .map((option) => option.name),
  };
}
