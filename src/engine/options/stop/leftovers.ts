import { minutesBetween } from '../../../calendar/index.js';
import type { Placement } from '../../../planner/fit/types.js';
import { joined, type Activity, type Phrase } from '../../../model/index.js';
import { reBookingCost } from '../../../price/index.js';
import { movedIn } from '../changes.js';
import { asPlanned, type Draft } from '../draft.js';
import { intoNextWindows, planFurther } from '../plan-further.js';
import { unitsIn, withoutUnits, type Planned } from '../plans.js';
import { priceDraft, type PricedDraft } from '../price-draft.js';
import { sayOption } from '../say-option.js';
import { unsoundIn } from '../sound.js';
import { freedFrom } from '../freed.js';
import type { Situation } from '../situation.js';
import type { MovedWork } from '../types.js';

/** Counts of units left over that the scheduler is asked about; those between are taken in proportion. */
const ASKED = 8;

/** Work left over after a stop, and what becomes of it. */
export interface Leftover {
  readonly units: number;
  readonly draft: Draft;
  /** All but overruns, in smallest coins; less the same as planned. */
  readonly fixed: number;
  /** What overruns of other windows gain in smallest coins, run by run. */
  readonly elsewhere: readonly number[];
  readonly moved: readonly MovedWork[];
  /** Units for which no window is left. */
  readonly unplacedUnits: number;
  readonly formula: Phrase;
  /** The scheduler was not asked about this count: its costs lie between those of its neighbours. */
  readonly inProportion: boolean;
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
  const free = freedFrom(at, activity.id);
  const known = new Map<number, Leftover>([[0, nothingLeft(at, planned)]]);
  for (const count of asked) {
    const effort = at.time.effort / asked.length;
    const draft = leave({ ...free, time: { ...at.time, effort } }, activity, count);
    const priced = priceDraft(draft, at);
    if (!priced) return null;
    const left = draft.unplaced.some((item) => item.activity === activity.id);
    const placed = (all: Draft['placements']): number =>
      all
        .filter((placement) => placement.activity === activity.id)
        .reduce((total, placement) => total + (placement.units ?? 0), 0);
    const others = priced.parts.filter((part) => part.part !== 'overrun');
    known.set(count, {
      units: count,
      draft,
      fixed: priced.costs.fixed - planned.costs.fixed,
      elsewhere: priced.overrunElsewhere,
      moved: movedIn(draft.placements, at.plan, at.planned.placements),
      unplacedUnits: left ? placed(at.planned.placements) - placed(draft.placements) : 0,
      formula: joined(
        others.map((other) => joined([other.what, other.formula], ': ')),
        '. ',
      ),
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
    formula: sayOption('nothing-left-over'),
    inProportion: false,
  };
}

/** What lies between two counts that were asked about, in proportion; beyond the last, in proportion to it. */
function between(known: ReadonlyMap<number, Leftover>, count: number): Leftover {
  const asked = [...known.keys()].sort((a, b) => a - b);
  const below = known.get(asked.filter((value) => value < count).at(-1)!)!;
  const above = known.get(asked.find((value) => value > count) ?? -1);
  const [from, to] = above ? [below, above] : [known.get(0)!, below];
  const share = (count - from.units) / (to.units - from.units);
  const mixed = (a: number, b: number): number => Math.round(a + share * (b - a));
  return {
    ...(above ?? below),
    units: count,
    fixed: mixed(from.fixed, to.fixed),
    elsewhere: from.elsewhere.map((cost, i) => mixed(cost, to.elsewhere[i]!)),
    formula: sayOption('in-proportion', { from: from.units, to: to.units }),
    inProportion: true,
  };
}

/** Counts from 1 to `most`, not more than `count` of them, as evenly apart as whole numbers allow. */
function spread(most: number, count: number): readonly number[] {
  if (most <= count) return Array.from({ length: Math.max(0, most) }, (_, i) => i + 1);
  const step = (most - 1) / (count - 1);
  return [...new Set(Array.from({ length: count }, (_, i) => Math.round(1 + i * step)))];
}

/** What stopping with so many units left comes to: the rest planned into the windows that follow. */
function leave(at: Situation, activity: Activity, units: number): Draft {
  const shorter = withoutUnits(at.planned.placements, at.window.id, activity, units);
  const next = intoNextWindows(at.plan, at.window.end, shorter, activity, units, at.time);
  const found = next
    ? { placements: next, unplaced: [], keyDates: datesWith(at, activity, next) }
    : leftIfUnsound(plannedFurther(at, activity, shorter), shorter, at, activity);
  const { placements } = found;
  const moved = movedIn(placements, at.plan, at.planned.placements);
  const visits = moved.filter((work) => work.activity === activity.id).length;
  const line = reBookingCost(units, visits, at.prices);
  return {
    id: `left ${units}`,
    kind: 'one-unit-less',
    name: '',
    changes: [],
    document: at.document,
    plan: at.plan,
    trains: at.trains,
    here: [{ ...at.planned, placements }],
    ...found,
    lines: line ? [{ part: 're-booking', ...line }] : [],
    notes: line ? [] : [sayOption('no-price-for-left-over')],
  };
}

/** What was found, unless it is no plan: then the units have no place, and the rest stays where it is. */
function leftIfUnsound(
  found: Planned,
  shorter: readonly Placement[],
  at: Situation,
  activity: Activity,
): Planned {
  const unsound = unsoundIn({ ...found, plan: at.plan }, at);
  if (unsound === undefined) return found;
  return {
    ...found,
    placements: shorter,
    unplaced: [{ activity: activity.id, reasons: [] }],
    unsound,
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
    (end, placement) => (placement.activity === activity.id ? Math.max(end, placement.to) : end),
    0,
  );
  return at.request.allocation.keyDates.map((date) => {
    const bears = date.package === activity.package && date.due === activity.keyDate;
    if (!bears || date.forecast === null || last <= date.forecast) return date;
    const floatMinutes = minutesBetween(last, date.due);
    return { ...date, forecast: last, floatMinutes, floatWindows: null, met: last <= date.due };
  });
}
