import type { Instant } from '../calendar/index.js';
import { compareOptions, type Comparison } from './compare-options.js';
import { decimalText, exactOf, minorOf, parseMoney } from './money.js';
import type { CostCurve } from './types.js';

/** Stopping after a given number of units, simulated. Run i uses the same random draws for every number of units. */
export interface StopCandidate {
  readonly units: number;
  /** Planned finish of the last unit. */
  readonly stopAt: Instant;
  readonly overrunByRun: readonly number[];
  /** Decimal text: cost of booking the remaining units again. Absent: calculated from the prices in `StopInputs`. */
  readonly reBooking?: string;
  /** Cost of the overruns it causes in other windows, per run, in minor units (pence). */
  readonly alsoByRun?: readonly number[];
}

export interface StopInputs {
  readonly candidates: readonly StopCandidate[];
  /** Planned units; those not done are booked again. */
  readonly unitsWanted: number;
  /** Decimal text: cost of booking and doing one remaining unit. */
  readonly pricePerLostUnit: string;
  /** Decimal text: cost of coming back at all, charged once when any unit remains. */
  readonly pricePerReturn?: string;
  readonly curve: CostCurve;
  readonly source?: string;
}

export interface StopChoice {
  readonly units: number;
  readonly stopAt: Instant;
  readonly reBooking: string;
  readonly expectedOverrunCost: string;
  readonly expectedTotal: string;
  readonly standardError: string;
  /**
   * Expected total minus that of the previous candidate: what the next unit (or step of units) costs. Negative: it
   * saves. Null for the first.
   */
  readonly oneMore: string | null;
  readonly oneMoreError: string | null;
  /** Whether it is within two standard errors of the best, compared run by run. */
  readonly tiedWithBest: boolean;
}

export interface BestStop {
  readonly currency: string;
  /** Sorted by number of units. */
  readonly choices: readonly StopChoice[];
  /** Units of the cheapest choice by expected total. Of equal ones, the fewest units: the earliest stop. */
  readonly bestUnits: number;
  readonly bestStopAt: Instant;
}

/**
 * Prices each number of units to stop after, overrun against re-booking, and names the cheapest.
 *
 * @throws {RangeError} As `compareOptions`; also when a candidate has more units than planned, or two have the same
 * number.
 */
export function bestStop(inputs: StopInputs): BestStop {
  const { curve, unitsWanted } = inputs;
  const candidates = [...inputs.candidates].sort((a, b) => a.units - b.units);
  candidates.forEach(({ units }, i) => {
    if (!Number.isInteger(units) || units < 0 || units > unitsWanted)
      throw new RangeError(`a stop after ${units} units is not among 0 to ${unitsWanted}`);
    if (candidates[i - 1]?.units === units)
      throw new RangeError(`the stop after ${units} units is given twice`);
  });
  const options = candidates.map((candidate) => {
    const left = unitsWanted - candidate.units;
    const lost = minorOf(exactOf(inputs.pricePerLostUnit).times(left), curve);
    const again = left > 0 ? parseMoney(inputs.pricePerReturn ?? '0', curve) : 0;
    return {
      name: String(candidate.units),
      overrunByRun: candidate.overrunByRun,
      curve,
      ...(candidate.alsoByRun && { alsoByRun: candidate.alsoByRun }),
      fixed: [
        {
          what: `${left} units booked again`,
          amount: candidate.reBooking ?? decimalText(lost + again, curve),
          source: inputs.source ?? 'given by the planner',
        },
      ],
    };
  });
  const all: Comparison = compareOptions(options);
  const best = candidates.find((candidate) => String(candidate.units) === all.cheapest)!;
  const choices = candidates.map((candidate, i): StopChoice => {
    const priced = all.options[i]!;
    const step = i === 0 ? undefined : compareOptions([options[i - 1]!, options[i]!]).options[1]!;
    return {
      units: candidate.units,
      stopAt: candidate.stopAt,
      reBooking: priced.fixedCost,
      expectedOverrunCost: priced.expectedOverrunCost,
      expectedTotal: priced.expectedTotal,
      standardError: priced.standardError,
      oneMore: step?.difference ?? null,
      oneMoreError: step?.differenceError ?? null,
      tiedWithBest: candidate === best || all.tied.includes(priced.name),
    };
  });
  return { currency: curve.currency, choices, bestUnits: best.units, bestStopAt: best.stopAt };
}
