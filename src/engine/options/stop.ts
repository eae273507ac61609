import { lengthMinutes, MINUTE, minutesBetween, type Instant } from '../../calendar/index.js';
import type { Placement } from '../../fit/types.js';
import type { Activity } from '../../model/index.js';
import {
  bestStop,
  costCurve,
  decimalText,
  parseMoney,
  reBookingCost,
  type RunCosts,
} from '../../price/index.js';
import { outlookOf, pairedFinishes, type PairedCase, type RiskNode } from '../../risk/index.js';
import { caseOf, runWindows, seedOf } from './costs.js';
import {
  addUp,
  movedIn,
  priceDraft,
  settingsOf,
  type Draft,
  type PricedDraft,
  type Situation,
} from './draft.js';
import { intoNextWindows, planFurther, unitsIn, withoutUnits, type Planned } from './plans.js';
import type { MovedWork, StopOutlook } from './types.js';
import { activityOf, asPlanned } from './windows.js';

// Repeated work that can stop between units: one unit less, the best stop, a cut-off time.

/** Counts of units left over that the scheduler is asked about; those between are taken in proportion. */
const ASKED = 8;

/** Work left over after a stop, and what becomes of it. */
export interface Leftover {
  readonly units: number;
  readonly draft: Draft;
  /** All but the overrun of the window itself; less the same as planned. */
  readonly fixed: number;
  readonly elsewhere: readonly number[];
  readonly moved: readonly MovedWork[];
  readonly unplacedUnits: number;
  readonly formula: string;
  readonly inProportion: boolean;
}

/** Repeated work of the window, and what there must wait for all of it. */
export function repeatedIn(at: Situation) {
  const here = unitsIn(at.window.id, at.planned.placements);
  return [...here].flatMap(([id, units]) => {
    const activity = activityOf(at, id);
    if (activity.work.kind !== 'units') return [];
    const waits = [...here.keys()].filter((other) =>
      activityOf(at, other).after.some((link) => link.activity === id && link.from === 'finish'),
    );
    const last = at.planned.placements
      .filter((one) => one.window === at.window.id && one.activity === id)
      .reduce((latest, one) => Math.max(latest, one.to), 0);
    return [{ activity: id, title: activity.title, units, waits, last }];
  });
}

/** What stopping with so many units left comes to: the rest planned into the windows that follow. */
export function leave(at: Situation, activity: Activity, units: number): Draft {
  const shorter = withoutUnits(at.planned.placements, at.window.id, activity, units);
  const next = intoNextWindows(at.plan, at.window.end, shorter, activity, units, at.time);
  const found = next
    ? { placements: next, unplaced: [], keyDates: datesWith(at, activity, next) }
    : plannedFurther(at, activity, shorter);
  const { placements } = found;
  const moved = movedIn(placements, at.plan, at.planned.placements);
  const visits = moved.filter((one) => one.activity === activity.id).length;
  const line = reBookingCost(units, visits, at.prices);
  return {
    id: `left ${units}`,
    kind: 'one-unit-less',
    name: `${units} left over`,
    changes: [],
    document: at.document,
    plan: at.plan,
    trains: at.trains,
    here: [{ ...at.planned, placements }],
    ...found,
    lines: line ? [{ part: 're-booking', ...line }] : [],
    notes: line
      ? []
      : ['The price book has no price for work left over: only its plant and labour are counted.'],
  };
}

function plannedFurther(
  at: Situation,
  activity: Activity,
  placements: readonly Placement[],
): Planned {
  const { plan, window, request, time } = at;
  const free = new Set([activity.id]);
  return planFurther(plan, window.end, placements, free, request.allocation, time);
}

/** The key date of an activity that ends with other visits than planned. */
function datesWith(
  at: Situation,
  activity: Activity,
  placements: readonly Placement[],
): Planned['keyDates'] {
  const last = placements.reduce(
    (end, one) => (one.activity === activity.id ? Math.max(end, one.to) : end),
    0,
  );
  return at.request.allocation.keyDates.map((one) => {
    const bears = one.package === activity.package && one.due === activity.keyDate;
    if (!bears || one.forecast === null || last <= one.forecast) return one;
    const floatMinutes = minutesBetween(last, one.due);
    return { ...one, forecast: last, floatMinutes, floatWindows: null, met: last <= one.due };
  });
}

/** Every count of units left over, from none to all but one. Null when stopped. */
export function leftovers(
  at: Situation,
  activity: Activity,
  planned: PricedDraft,
  told: () => void,
): readonly Leftover[] | null {
  const units = unitsIn(at.window.id, at.planned.placements).get(activity.id)!;
  const asked = spread(units - 1, ASKED);
  const known = new Map<number, Leftover>([[0, nothingLeft(at, planned)]]);
  const until = at.time.clock() + 2 * 1000 * at.time.seconds;
  for (const count of asked) {
    // The first is asked whatever it takes: one unit less hangs on it.
    if (known.size > 1 && at.time.clock() > until) break;
    const seconds = at.time.seconds / asked.length;
    const draft = leave({ ...at, time: { ...at.time, seconds } }, activity, count);
    const priced = priceDraft(draft, at);
    if (!priced) return null;
    const left = draft.unplaced.some((one) => one.activity === activity.id);
    const placed = (all: Draft['placements']): number =>
      all
        .filter((one) => one.activity === activity.id)
        .reduce((total, one) => total + (one.units ?? 0), 0);
    const others = priced.parts.filter((one) => one.part !== 'overrun');
    known.set(count, {
      units: count,
      draft,
      fixed: priced.costs.fixed - planned.costs.fixed,
      elsewhere: priced.overrunElsewhere,
      moved: movedIn(draft.placements, at.plan, at.planned.placements),
      unplacedUnits: left ? placed(at.planned.placements) - placed(draft.placements) : 0,
      formula: others.map((one) => `${one.what}: ${one.formula}`).join('. '),
      inProportion: false,
    });
    told();
  }
  return Array.from({ length: units }, (_, count) => known.get(count) ?? between(known, count));
}

function nothingLeft(at: Situation, planned: PricedDraft): Leftover {
  return {
    units: 0,
    draft: asPlanned(at),
    fixed: 0,
    elsewhere: planned.overrunHere.map(() => 0),
    moved: [],
    unplacedUnits: 0,
    formula: 'nothing is left over',
    inProportion: false,
  };
}

/** What lies between two counts that were asked about, in proportion; beyond the last, in proportion to it. */
function between(known: ReadonlyMap<number, Leftover>, count: number): Leftover {
  const asked = [...known.keys()].sort((a, b) => a - b);
  const below = known.get(asked.filter((one) => one < count).at(-1)!)!;
  const above = known.get(asked.find((one) => one > count) ?? -1);
  const [from, to] = above ? [below, above] : [known.get(0)!, below];
  const share = (count - from.units) / (to.units - from.units);
  const mixed = (a: number, b: number): number => Math.round(a + share * (b - a));
  return {
    ...(above ?? below),
    units: count,
    fixed: mixed(from.fixed, to.fixed),
    elsewhere: from.elsewhere.map((cost, i) => mixed(cost, to.elsewhere[i]!)),
    formula: `in proportion between ${from.units} and ${to.units} left over`,
    inProportion: true,
  };
}

function spread(most: number, count: number): readonly number[] {
  if (most <= count) return Array.from({ length: Math.max(0, most) }, (_, i) => i + 1);
  const step = (most - 1) / (count - 1);
  return [...new Set(Array.from({ length: count }, (_, i) => Math.round(1 + i * step)))];
}

/** The window's own runs with so many units left over, under the luck of the plan. */
export interface StopRuns {
  /** By units left over. */
  readonly finishes: readonly Float64Array[];
  readonly costs: readonly (readonly number[])[];
}

export function stopRuns(at: Situation, activity: Activity, counts: number): StopRuns | null {
  const works = Array.from({ length: counts }, (_, left) => ({
    ...at.planned,
    placements: withoutUnits(at.planned.placements, at.window.id, activity, left),
  }));
  const runs = runWindows(works, settingsOf(at), seedOf(at.request.seed, at.window.id));
  return runs && { finishes: runs.map((one) => one.finishes), costs: runs.map((one) => one.costs) };
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
    { ...at.planned, prices, holidays: at.holidays, ...at.plan },
    overruns.flat().reduce((top, one) => Math.max(top, one), 0),
  );
  const found = bestStop({
    unitsWanted: unitsPlanned,
    pricePerLostUnit: '0',
    curve,
    candidates: left.map((one, count) => ({
      units: unitsPlanned - count,
      stopAt: stopAt(at, activity, count),
      overrunByRun: overruns[count]!,
      alsoByRun: one.elsewhere,
      reBooking: decimalText(one.fixed, prices),
    })),
  });
  return {
    activity: activity.id,
    title: activity.title,
    unitsPlanned,
    bestUnits: found.bestUnits,
    bestStopAt: found.bestStopAt,
    rows: found.choices.map((choice) => {
      const count = unitsPlanned - choice.units;
      const one = left[count]!;
      const total = runs.costs[count]!.reduce((sum, cost) => sum + cost, 0);
      const overrun = Math.round(total / runs.costs[count]!.length);
      return {
        units: choice.units,
        stopAt: choice.stopAt,
        onTime: outlookOf(Float64Array.from(runs.finishes[count]!).sort(), booked).onTime,
        expectedOverrunCost: decimalText(overrun, prices),
        reBooking: decimalText(parseMoney(choice.expectedTotal, prices) - overrun, prices),
        reBookingFormula: one.formula,
        expectedTotal: choice.expectedTotal,
        standardError: choice.standardError,
        oneMore: choice.oneMore,
        oneMoreError: choice.oneMoreError,
        tiedWithBest: choice.tiedWithBest,
        moved: one.moved,
        unplacedUnits: one.unplacedUnits,
        inProportion: one.inProportion,
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
      .filter((one) => one.window === at.window.id && one.activity === activity.id)
      .reduce((last, one) => Math.max(last, one.to), 0) -
    safe * MINUTE
  );
}

/** A rule for the shift: no unit begins after a moment. What each run then comes to. */
export interface CutOffRuns {
  readonly at: Instant;
  readonly costs: RunCosts;
  readonly overrun: readonly number[];
  readonly elsewhere: readonly number[];
  /** Costs of booking again, run by run. */
  readonly again: readonly number[];
  readonly finishes: Float64Array;
  readonly meanLeft: number;
}

const GRID = 5 * MINUTE;

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
      meanLeft: lost.reduce((sum, count) => sum + count, 0) / lost.length,
    };
  };
  if (request.cutOffAt !== undefined) return of(request.cutOffAt);
  const from = at.planned.placements
    .filter((one) => one.window === window.id && one.activity === activity.id)
    .reduce((first, one) => Math.min(first, one.from), window.end);
  let best: { sum: number; found: CutOffRuns } | undefined;
  for (let moment = Math.ceil(from / GRID) * GRID; moment <= window.end; moment += GRID) {
    const found = of(moment);
    const sum = found.costs.varying.reduce((total, cost) => total + cost, 0);
    // Of equals the latest: it leaves least undone.
    if (!best || sum <= best.sum) best = { sum, found };
  }
  return best?.found ?? of(window.end);
}

/** When the second and each further unit could begin, in minutes after the window's start, run by run. */
function unitStarts(
  at: Situation,
  activity: Activity,
  units: number,
): readonly Float64Array[] | null {
  const whole = caseOf(at.planned, at.risk);
  const cases = Array.from({ length: units - 1 }, (_, k) => {
    const node = whole.built.meanings.findIndex(
      (one) => one.activity === activity.id && one.part === 'unit' && one.unit === k + 2,
    );
    return before(whole, node);
  });
  const { runs, shouldStop } = at.risk;
  const found = pairedFinishes([whole, ...cases], {
    seed: seedOf(at.request.seed, at.window.id),
    runs,
    ...(shouldStop && { shouldStop }),
  });
  return found && found.slice(1);
}

/** All that one node waits for, and nothing else: it finishes when the node may begin. */
function before({ network, names }: PairedCase, target: number): PairedCase {
  const wanted = new Set<number>();
  const finishes = new Set<number>();
  const open = [target];
  for (let node = open.pop(); node !== undefined; node = open.pop()) {
    for (const link of network.nodes[node]!.after) {
      if (link.from === 'finish') finishes.add(link.node);
      if (wanted.has(link.node)) continue;
      wanted.add(link.node);
      open.push(link.node);
    }
  }
  const kept = [...wanted].sort((a, b) => a - b);
  const place = new Map(kept.map((node, index) => [node, index]));
  return {
    names: kept.map((node) => (finishes.has(node) ? names[node]! : `${names[node]!} begun`)),
    network: {
      ...network,
      nodes: kept.map((index): RiskNode => {
        const { sameDurationAs: twin, ...node } = network.nodes[index]!;
        const after = node.after.map((link) => ({ ...link, node: place.get(link.node)! }));
        // Only its start is waited for, so its length must not hold anything up.
        if (!finishes.has(index)) {
          const { events: _, ...bare } = node;
          return { ...bare, after, duration: { kind: 'constant', minutes: 0 } };
        }
        const own = twin === undefined ? undefined : place.get(twin);
        return own === undefined
          ? { ...node, after, duration: network.nodes[twin ?? index]!.duration }
          : { ...node, after, sameDurationAs: own };
      }),
    },
  };
}
