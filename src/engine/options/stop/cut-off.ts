import {
  addMinutes,
  isoText,
  lengthMinutes,
  MINUTE,
  type Instant,
} from '../../../calendar/index.js';
import type { Activity } from '../../../model/index.js';
import { decimalText, type RunCosts } from '../../../price/index.js';
import { nearestRank, outlookOf } from '../../../risk/index.js';
import { entryOf, type Entry } from '../entry.js';
import type { Leftover } from './leftovers.js';
import { addUp, type PricedDraft } from '../price-draft.js';
import type { Situation } from '../situation.js';
import type { StopRuns } from './stop-outlook.js';
import type { OptionPart } from '../types.js';
import { unitStarts } from './unit-starts.js';

/** A rule for the shift: no unit begins after a moment. What each run then comes to. */
interface CutOffRuns {
  readonly at: Instant;
  readonly costs: RunCosts;
  /** Costs of the window's own overrun in smallest coins, run by run. */
  readonly overrun: readonly number[];
  /** What overruns of other windows gain in smallest coins, run by run. */
  readonly elsewhere: readonly number[];
  /** Costs of booking again in smallest coins, run by run. */
  readonly again: readonly number[];
  /** Minutes from the window's start to handback, run by run. */
  readonly finishes: Float64Array;
  /** Units left over on average. */
  readonly meanLeft: number;
}

/** Cut-offs are looked for this far apart. */
const GRID = 5 * MINUTE;

const meanOf = (some: readonly number[]): number =>
  some.reduce((sum, value) => sum + value, 0) / some.length;

/**
 * The cut-off that costs least, or the one asked for. At least one unit is done in every run.
 * Null when stopped.
 */
export function bestCutOff(
  at: Situation,
  activity: Activity,
  left: readonly Leftover[],
  runs: StopRuns,
  planned: PricedDraft,
): CutOffRuns | null {
  const starts = unitStarts(at, activity, left.length);
  if (!starts) return null;
  const { window, request } = at;
  const of = (moment: Instant): CutOffRuns => {
    const limit = (moment - window.start) / MINUTE;
    const lost = planned.overrunHere.map((_, run) => {
      let done = 1;
      while (done < left.length && starts[done - 1]![run]! <= limit) done += 1;
      return left.length - done;
    });
    const overrun = lost.map((count, run) => runs.costs[count]![run]!);
    const elsewhere = lost.map((count, run) => left[count]!.elsewhere[run]!);
    const again = lost.map((count) => left[count]!.fixed);
    return {
      at: moment,
      overrun,
      elsewhere,
      again,
      costs: { varying: addUp([overrun, elsewhere, again]), fixed: planned.costs.fixed },
      finishes: Float64Array.from(lost, (count, run) => runs.finishes[count]![run]!),
      meanLeft: meanOf(lost),
    };
  };
  if (request.cutOffAt !== undefined) return of(request.cutOffAt);
  const from = at.planned.placements
    .filter((placement) => placement.window === window.id && placement.activity === activity.id)
    .reduce((first, placement) => Math.min(first, placement.from), window.end);
  let best: { sum: number; found: CutOffRuns } | undefined;
  for (let moment = Math.ceil(from / GRID) * GRID; moment <= window.end; moment += GRID) {
    const found = of(moment);
    const sum = found.costs.varying.reduce((total, cost) => total + cost, 0);
    // Of equals the latest: it leaves least undone.
    if (!best || sum <= best.sum) best = { sum, found };
  }
  return best?.found ?? of(window.end);
}

/** A cut-off is a rule for the shift: the plan stays, and each run leaves what it has not begun by then. */
export function cutOffEntry(
  at: Situation,
  activity: string,
  cut: CutOffRuns,
  planned: PricedDraft,
): Entry {
  const { prices, window } = at;
  const base = entryOf(planned, at);
  const clock = isoText(cut.at, window.zone).slice(11, 16);
  const inputs = [
    { name: 'cut-off', value: isoText(cut.at, window.zone), unit: '' },
    { name: 'left over on average', value: cut.meanLeft.toFixed(3), unit: 'units' },
    { name: 'runs', value: String(cut.overrun.length), unit: '' },
  ];
  const part = (kind: OptionPart['part'], what: string, costs: readonly number[]): OptionPart => ({
    part: kind,
    what,
    amount: decimalText(Math.round(meanOf(costs)), prices),
    formula: `mean of ${costs.length} simulated shifts, each with what it had begun by ${clock}`,
    inputs,
    source: prices.source,
  });
  const sorted = Float64Array.from(cut.finishes).sort();
  const moment = (share: number): Instant =>
    addMinutes(window.start, Math.ceil(nearestRank(sorted, share)));
  return {
    option: {
      ...base.option,
      id: 'cut-off',
      kind: 'earlier-cut-off',
      name: `Cut-off at ${clock}`,
      changes: [
        `No unit of ${activity} begins after ${clock}; what is then left goes to the windows that follow.`,
      ],
      handbacks: [
        {
          ...planned.handbacks[0]!,
          onTime: outlookOf(sorted, lengthMinutes(window)).onTime,
          p50: moment(0.5),
          p80: moment(0.8),
          p95: moment(0.95),
        },
      ],
      parts: [
        part('overrun', `Overrun of ${window.id}`, cut.overrun),
        ...(cut.elsewhere.some((value) => value !== 0)
          ? [part('overrun', 'Overrun of later windows: change', cut.elsewhere)]
          : []),
        ...planned.parts.filter((item) => item.part !== 'overrun'),
        part('re-booking', 'Booking again what is left', cut.again),
      ],
      notes: ['At least one unit is done in every run.'],
    },
    costs: cut.costs,
    turn:
      cut.meanLeft > 0
        ? {
            what: 'Booking again what is left',
            minor: Math.round(meanOf(cut.again)),
            each: { count: cut.meanLeft, word: 'a unit' },
          }
        : undefined,
  };
}
