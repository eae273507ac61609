import type { Instant } from '../calendar/index.js';
import { compareOptions, type Comparison } from './compare-options.js';
import { decimalText, exactOf, minorOf, parseMoney } from './money.js';
import type { CostCurve } from './types.js';

/** Stopping after so many units, simulated: run i is the same luck for every count of units. */
export interface StopCandidate {
  readonly units: number;
  /** When the last of the units is planned to be done. */
  readonly stopAt: Instant;
  readonly overrunByRun: readonly number[];
  /** Decimal text: what booking the rest again costs, where it is known; absent: by the prices given for all. */
  readonly reBooking?: string;
  /** What it does to the overruns of other windows, run by run, in smallest coins. */
  readonly alsoByRun?: readonly number[];
}

export interface StopInputs {
  readonly candidates: readonly StopCandidate[];
  /** Units that were to be done; what is left over is booked again. */
  readonly unitsWanted: number;
  /** Decimal text: what one unit left over costs to book and do again. */
  readonly pricePerLostUnit: string;
  /** Decimal text: what any return costs, however few units are left; nothing when none is. */
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
  /** Expected total less that of stopping at the candidate before: what one more unit (or step of units) costs; negative: saves. Null for the first. */
  readonly oneMore: string | null;
  readonly oneMoreError: string | null;
  /** Within two standard errors of the best, run by run. */
  readonly tiedWithBest: boolean;
}

export interface BestStop {
  readonly currency: string;
  /** In order of units. */
  readonly choices: readonly StopChoice[];
  /** Units of the choice with the least expected total; the fewer of equals, being the earlier stop. */
  readonly bestUnits: number;
  readonly bestStopAt: Instant;
}

/**
 * One more unit, or stop? Every count of units is priced, overrun against re-booking, and the cheapest is named.
 *
 * @throws {RangeError} As `compareOptions`; when a candidate has more units than are wanted, or a count twice.
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
