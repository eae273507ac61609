import { decimalText } from './money.js';
import { errorText, meanText, sampleSums, standardError } from './sample-sums.js';
import type { CostCurve, CostStep } from './types.js';

/** How many simulation runs handed back a given number of minutes after the booked end; 0 or less: on time. */
export interface OverrunCount {
  readonly minutes: number;
  readonly count: number;
}

/** Counts simulation runs by their overrun in minutes. Which run had which overrun is lost. */
export function countOverruns(overrunByRun: Iterable<number>): readonly OverrunCount[] {
  const counts = new Map<number, number>();
  for (const minutes of overrunByRun) counts.set(minutes, (counts.get(minutes) ?? 0) + 1);
  return [...counts].map(([minutes, count]) => ({ minutes, count }));
}

/** Mean, percentiles and exceedance of the cost of overruns. */
export interface ExpectedCost {
  readonly currency: string;
  readonly runs: number;
  /** Mean over the runs. */
  readonly expected: string;
  /** Standard error of `expected`. */
  readonly standardError: string;
  /** The lowest cost that at least 50 % of the runs do not exceed; `p80` and `p95` likewise. */
  readonly p50: string;
  readonly p80: string;
  readonly p95: string;
  /** For each cost that occurred, ascending: the fraction of runs that cost more. */
  readonly exceedance: readonly { readonly cost: string; readonly chanceOfMore: number }[];
  /** For each step of the curve: the fraction of runs that reached it, and its standard error. */
  readonly steps: readonly (CostStep & {
    readonly chance: number;
    readonly standardError: number;
  })[];
}

/**
 * Expected cost, percentiles and exceedance from a cost curve and how often each overrun occurred.
 *
 * @throws {RangeError} When there are no runs, a count is negative or not whole, or an overrun is beyond the curve.
 */
export function expectedCost(curve: CostCurve, overruns: readonly OverrunCount[]): ExpectedCost {
  const counts = overrunCounts(curve, overruns);
  const byCost = new Map<number, number>();
  for (const [minutes, count] of counts) {
    const cost = curve.minor[minutes]!;
    byCost.set(cost, (byCost.get(cost) ?? 0) + count);
  }
  const costs = [...byCost].sort((a, b) => a[0] - b[0]);
  const sums = sampleSums(costs);
  const { runs } = sums;
  let seen = 0;
  const exceedance = costs.map(([cost, count]) => {
    seen += count;
    return { cost: decimalText(cost, curve), chanceOfMore: (runs - seen) / runs };
  });
  return {
    currency: curve.currency,
    runs,
    expected: meanText(sums, curve),
    standardError: errorText(standardError(sums), curve),
    p50: decimalText(quantile(costs, runs, 50), curve),
    p80: decimalText(quantile(costs, runs, 80), curve),
    p95: decimalText(quantile(costs, runs, 95), curve),
    exceedance,
    steps: curve.steps.map(({ rise: _, ...step }) => {
      let reached = 0;
      for (const [minutes, count] of counts) if (minutes >= step.atMinute) reached += count;
      const chance = reached / runs;
      return { ...step, chance, standardError: Math.sqrt((chance * (1 - chance)) / runs) };
    }),
  };
}

/** Number of runs per overrun; early handbacks count as 0. */
function overrunCounts(
  curve: CostCurve,
  overruns: readonly OverrunCount[],
): ReadonlyMap<number, number> {
  const counts = new Map<number, number>();
  for (const { minutes, count } of overruns) {
    if (!Number.isInteger(count) || count < 0)
      throw new RangeError(`a count of runs is a whole number, not ${count}`);
    if (count === 0) continue;
    const overrun = overrunOn(curve, minutes);
    counts.set(overrun, (counts.get(overrun) ?? 0) + count);
  }
  if (counts.size === 0) throw new RangeError('an expected cost needs at least one run');
  return counts;
}

/** The minute of the curve for a simulated handback. @throws {RangeError} When it is not a whole minute or is beyond the curve. */
export function overrunOn(curve: CostCurve, minutes: number): number {
  const overrun = Math.max(0, minutes);
  if (!Number.isInteger(overrun) || overrun > curve.maxMinutes)
    throw new RangeError(
      `an overrun of ${minutes} min is not on the cost curve, which has whole minutes up to ${curve.maxMinutes}`,
    );
  return overrun;
}

/** Nearest-rank percentile: the lowest cost with at least `percent` of the runs at or below it. Exact: integers only. */
function quantile(
  costs: readonly (readonly [cost: number, count: number])[],
  runs: number,
  percent: number,
): number {
  let seen = 0;
  for (const [cost, count] of costs) {
    seen += count;
    if (seen * 100 >= percent * runs) return cost;
  }
  return costs.at(-1)![0];
}
