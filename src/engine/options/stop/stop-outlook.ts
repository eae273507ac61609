import { lengthMinutes, MINUTE, type Instant } from '../../../calendar/index.js';
import type { Activity } from '../../../model/index.js';
import { bestStop, costCurve, decimalText, parseMoney } from '../../../price/index.js';
import { outlookOf } from '../../../risk/index.js';
import { runWindows, seedOf } from '../costs.js';
import type { Leftover } from './leftovers.js';
import { withoutUnits } from '../plans.js';
import { settingsOf, type Situation } from '../situation.js';
import type { StopOutlook } from '../types.js';

/** The window's own runs with so many units left over, with the plan's draws. */
export interface StopRuns {
  /** Minutes from the window's start to handback, by units left over, then run by run. */
  readonly finishes: readonly Float64Array[];
  /** Costs of the overrun in smallest coins, by units left over, then run by run. */
  readonly costs: readonly (readonly number[])[];
}

/** Simulates stopping with none to all but one of so many units left. Null when stopped. */
export function stopRuns(at: Situation, activity: Activity, counts: number): StopRuns | null {
  const works = Array.from({ length: counts }, (_, left) => ({
    ...at.planned,
    placements: withoutUnits(at.planned.placements, at.window.id, activity, left),
  }));
  const runs = runWindows(works, settingsOf(at), seedOf(at.request.seed, at.window.id));
  return runs && { finishes: runs.map((run) => run.finishes), costs: runs.map((run) => run.costs) };
}

/** Stop after so many units, or do one more: every count, with the rest planned elsewhere. */
export function stopOutlook(
  at: Situation,
  activity: Activity,
  left: readonly Leftover[],
  runs: StopRuns,
): StopOutlook {
  const { prices, window } = at;
  const booked = lengthMinutes(window);
  const unitsPlanned = left.length;
  const overruns = runs.finishes.map((list) =>
    Array.from(list, (minutes) => Math.max(0, Math.ceil(minutes - booked))),
  );
  const curve = costCurve(
    { ...at.planned, prices, holidays: at.holidays, ...at.plan, keyDates: 'none' },
    overruns.flat().reduce((top, value) => Math.max(top, value), 0),
  );
  const inputs = {
    unitsWanted: unitsPlanned,
    pricePerLostUnit: '0',
    curve,
    candidates: left.map((leftover, count) => ({
      units: unitsPlanned - count,
      stopAt: stopAt(at, activity, count),
      overrunByRun: overruns[count]!,
      // The curve is that of all units; what fewer of them change by the run is added here.
      alsoByRun: leftover.elsewhere.map(
        (cost, run) => cost + runs.costs[count]![run]! - curve.minor[overruns[count]![run]!]!,
      ),
      reBooking: decimalText(leftover.fixed, prices),
    })),
  };
  const found = bestStop(inputs);
  // What leaves work that finds no place is not the best, however little it costs.
  const placed = inputs.candidates.filter((_, count) => left[count]!.draft.unplaced.length === 0);
  const best = placed.length === left.length ? found : bestStop({ ...inputs, candidates: placed });
  const tied = new Set(
    best.choices.filter((choice) => choice.tiedWithBest).map((choice) => choice.units),
  );
  return {
    activity: activity.id,
    title: activity.title,
    unitsPlanned,
    bestUnits: best.bestUnits,
    bestStopAt: best.bestStopAt,
    rows: found.choices.map((choice) => {
      const count = unitsPlanned - choice.units;
      const leftover = left[count]!;
      const total = runs.costs[count]!.reduce((sum, cost) => sum + cost, 0);
      const overrun = Math.round(total / runs.costs[count]!.length);
      return {
        units: choice.units,
        stopAt: choice.stopAt,
        onTime: outlookOf(Float64Array.from(runs.finishes[count]!).sort(), booked).onTime,
        expectedOverrunCost: decimalText(overrun, prices),
        reBooking: decimalText(parseMoney(choice.expectedTotal, prices) - overrun, prices),
        reBookingFormula: leftover.formula,
        expectedTotal: choice.expectedTotal,
        standardError: choice.standardError,
        oneMore: choice.oneMore,
        oneMoreError: choice.oneMoreError,
        tiedWithBest: tied.has(choice.units),
        moved: leftover.moved,
        unplacedUnits: leftover.unplacedUnits,
        inProportion: leftover.inProportion,
      };
    }),
  };
}

/** When the last unit is planned to be done with so many left over. */
function stopAt(at: Situation, activity: Activity, left: number): Instant {
  const { work } = activity;
  const safe = work.kind === 'units' ? work.makeSafeMinutes : 0;
  return (
    withoutUnits(at.planned.placements, at.window.id, activity, left)
      .filter(
        (placement) => placement.window === at.window.id && placement.activity === activity.id,
      )
      .reduce((last, placement) => Math.max(last, placement.to), 0) -
    safe * MINUTE
  );
}
