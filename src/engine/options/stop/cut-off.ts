import {
  addMinutes,
  isoText,
  lengthMinutes,
  MINUTE,
  type Instant,
} from '../../../calendar/index.js';
import { eachOnce, type Activity, type Phrase } from '../../../model/index.js';
import { decimalText, type RunCosts } from '../../../price/index.js';
import { sayPrice } from '../../../price/say-price.js';
import { nearestRank, outlookOf } from '../../../risk/index.js';
import { addedNote, changedDates, dateNotes } from '../changes.js';
import { noPlaceIn, type Draft } from '../draft.js';
import { entryOf, type Entry } from '../entry.js';
import type { Leftover } from './leftovers.js';
import { addUp, type PricedDraft } from '../price-draft.js';
import { sayOption } from '../say-option.js';
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
  /** The plans of what the runs leave. */
  readonly leaves: readonly Draft[];
}

/** Why there is no such cut-off: some runs leave work that finds no place. */
export interface NoCutOff {
  readonly reason: Phrase;
}

/** Cut-offs are looked for this far apart. */
const GRID = 5 * MINUTE;

const meanOf = (some: readonly number[]): number =>
  some.reduce((sum, value) => sum + value, 0) / some.length;

/**
 * The cut-off that costs least, or the one asked for. At least one unit is done in every run, and what any run leaves
 * has a place. Null when stopped.
 */
export function bestCutOff(
  at: Situation,
  activity: Activity,
  left: readonly Leftover[],
  runs: StopRuns,
  planned: PricedDraft,
): CutOffRuns | NoCutOff | null {
  const starts = unitStarts(at, activity, left.length);
  if (!starts) return null;
  const { window, request } = at;
  const of = (moment: Instant): CutOffRuns | NoCutOff => {
    const limit = (moment - window.start) / MINUTE;
    const lost = planned.overrunHere.map((_, run) => {
      let done = 1;
      while (done < left.length && starts[done - 1]![run]! <= limit) done += 1;
      return left.length - done;
    });
    const leaves = [...new Set(lost)].sort((a, b) => a - b).map((count) => left[count]!.draft);
    const undone = leaves.find((draft) => draft.unplaced.length > 0);
    if (undone) return { reason: noPlaceIn(undone, activity.id) };
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
      leaves,
    };
  };
  if (request.cutOffAt !== undefined) return of(request.cutOffAt);
  const from = at.planned.placements
    .filter((placement) => placement.window === window.id && placement.activity === activity.id)
    .reduce((first, placement) => Math.min(first, placement.from), window.end);
  let best: { sum: number; found: CutOffRuns } | undefined;
  for (let moment = Math.ceil(from / GRID) * GRID; moment <= window.end; moment += GRID) {
    const found = of(moment);
    if ('reason' in found) continue;
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
  const moment = { at: cut.at, zone: window.zone };
  const inputs = [
    { name: sayOption('input-cut-off'), value: isoText(cut.at, window.zone), unit: '' },
    {
      name: sayOption('input-left-on-average'),
      value: cut.meanLeft.toFixed(3),
      unit: sayPrice('units'),
    },
    { name: sayOption('input-runs'), value: String(cut.overrun.length), unit: '' },
  ];
  const part = (kind: OptionPart['part'], what: Phrase, costs: readonly number[]): OptionPart => ({
    part: kind,
    what,
    amount: decimalText(Math.round(meanOf(costs)), prices),
    formula: sayOption('mean-of-shifts', { count: costs.length, moment }),
    inputs,
    source: prices.source,
  });
  const sorted = Float64Array.from(cut.finishes).sort();
  const by = (share: number): Instant =>
    addMinutes(window.start, Math.ceil(nearestRank(sorted, share)));
  return {
    option: {
      ...base.option,
      id: 'cut-off',
      kind: 'earlier-cut-off',
      name: sayOption('cut-off-at', { moment }),
      changes: [sayOption('no-unit-begins-after', { activity, moment })],
      handbacks: [
        {
          ...planned.handbacks[0]!,
          onTime: outlookOf(sorted, lengthMinutes(window)).onTime,
          p50: by(0.5),
          p80: by(0.8),
          p95: by(0.95),
        },
      ],
      parts: [
        part('overrun', sayOption('overrun-of', { windows: [window.id] }), cut.overrun),
        ...(cut.elsewhere.some((value) => value !== 0)
          ? [part('overrun', sayOption('overrun-change-later'), cut.elsewhere)]
          : []),
        ...planned.parts.filter((item) => item.part !== 'overrun'),
        part('re-booking', sayOption('left-booked-again'), cut.again),
      ],
      notes: [...base.option.notes, sayOption('one-unit-always'), ...notesOn(cut.leaves, at)],
    },
    costs: cut.costs,
    turn:
      cut.meanLeft > 0
        ? {
            what: sayOption('left-booked-again'),
            minor: Math.round(meanOf(cut.again)),
            each: { count: cut.meanLeft, by: 'unit' },
          }
        : undefined,
  };
}

/** What is to be known of where the rest then goes. */
function notesOn(leaves: readonly Draft[], at: Situation): readonly Phrase[] {
  const { keyDates } = at.request.allocation;
  return eachOnce([
    ...leaves.flatMap((draft) =>
      dateNotes(changedDates(draft.keyDates, keyDates), at.plan.zone, true),
    ),
    ...leaves.flatMap((draft) => draft.notes),
    ...addedNote(
      leaves.flatMap((draft) => draft.placements),
      at,
    ),
  ]);
}
