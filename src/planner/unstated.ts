import { sayOfPlan } from './plan-sentences.js';
import {
  samePlace,
  unitsLeft,
  type Activity,
  type Note,
  type Placement,
  type Plan,
  type Worded,
} from '../model/index.js';

/** Two activities of a plan of which nobody said what it takes to run trains, or to work side by side. */
export interface Unstated extends Worded {
  /** Of work in two windows, the earlier: whether the line is fit to run after it is not said. */
  readonly activity: string;
  readonly other: string;
  readonly kind: 'between-windows' | 'same-place';
  /** Where their pieces lie, in order of time. */
  readonly windows: readonly string[];
}

interface Piece extends Placement {
  readonly window: string;
  readonly row: Activity;
}

/**
 * What some placements leave unsaid: work of one package in different windows, where nothing says whether the line is fit
 * to run in between; then work at one place at the same time of which not all is said to share it. Each pair of
 * activities once, in order of time.
 */
export function unstatedIn(plan: Plan, placements: readonly Placement[]): Unstated[] {
  const pieces = piecesOf(plan, placements);
  return [...betweenWindows(pieces), ...atOnePlace(plan, pieces)];
}

/** Notes on packages of which something is begun and something left over, with nothing said of the line after it. */
export function leftOpenNotes(plan: Plan, placements: readonly Placement[]): Note[] {
  const placed = new Map<string, number>();
  for (const placement of placements)
    placed.set(placement.activity, (placed.get(placement.activity) ?? 0) + (placement.units ?? 1));
  const inside = plan.activities.filter((activity) => activity.place === 'inside');
  const isLeft = (activity: Activity): boolean =>
    (placed.get(activity.id) ?? 0) < unitsLeft(activity.work);
  const packages = [...new Set(inside.map((activity) => activity.package))].flatMap((name) => {
    const own = inside.filter((activity) => activity.package === name);
    const left = own.filter(isLeft);
    const begun = own.filter(
      (activity) =>
        activity.madeGoodBy === undefined &&
        placed.has(activity.id) &&
        left.some((other) => other !== activity || !paysMakeSafe(activity)),
    );
    return begun.length === 0 ? [] : [{ package: name, begun: idsOf(begun), left: idsOf(left) }];
  });
  return packages.length === 0
    ? []
    : [{ code: 'left-open', ...sayOfPlan('left-open', { packages }) }];
}

function piecesOf(plan: Plan, placements: readonly Placement[]): Piece[] {
  const rows = new Map(plan.activities.map((activity) => [activity.id, activity]));
  return placements
    .flatMap((placement): Piece[] => {
      const row = rows.get(placement.activity);
      return row?.place === 'inside' && placement.window !== null
        ? [{ ...placement, window: placement.window, row }]
        : [];
    })
    .sort((a, b) => a.from - b.from || a.to - b.to);
}

function betweenWindows(pieces: readonly Piece[]): Unstated[] {
  const packages = new Map<string, Piece[]>();
  for (const piece of pieces) {
    const known = packages.get(piece.row.package);
    if (known) known.push(piece);
    else packages.set(piece.row.package, [piece]);
  }
  const pairs = new Map<string, { first: Piece; second: Piece; windows: Set<string> }>();
  for (const own of packages.values())
    own.forEach((first, at) => {
      if (first.row.madeGoodBy !== undefined) return;
      for (const second of own.slice(at + 1)) {
        if (second.window === first.window || second.from === first.from) continue;
        if (second.row === first.row && paysMakeSafe(first.row)) continue;
        const key = JSON.stringify([first.activity, second.activity]);
        const known = pairs.get(key) ?? { first, second, windows: new Set<string>() };
        known.windows.add(first.window).add(second.window);
        pairs.set(key, known);
      }
    });
  return [...pairs.values()].map(({ first, second, windows }) => ({
    activity: first.activity,
    other: second.activity,
    kind: 'between-windows',
    windows: [...windows],
    ...(first.row === second.row
      ? sayOfPlan('goes-on-between', { activity: first.activity, windows: [...windows] })
      : sayOfPlan('in-two-windows', {
          activity: first.activity,
          window: first.window,
          other: second.activity,
          otherWindow: second.window,
        })),
  }));
}

function atOnePlace(plan: Plan, pieces: readonly Piece[]): Unstated[] {
  const order = new Map(plan.activities.map((activity, at) => [activity.id, at]));
  const pairs = new Map<string, { both: readonly [Piece, Piece]; windows: Set<string> }>();
  let going: Piece[] = [];
  for (const piece of pieces) {
    if (piece.to <= piece.from) continue;
    going = going.filter((item) => item.to > piece.from);
    for (const other of going) {
      if (other.row === piece.row || !isUnsaid(other.row, piece.row)) continue;
      const inOrder = order.get(other.activity)! < order.get(piece.activity)!;
      const both = inOrder ? ([other, piece] as const) : ([piece, other] as const);
      const key = JSON.stringify(both.map((item) => item.activity));
      const known = pairs.get(key) ?? { both, windows: new Set<string>() };
      known.windows.add(other.window).add(piece.window);
      pairs.set(key, known);
    }
    going.push(piece);
  }
  return [...pairs.values()].map(({ both: [first, other], windows }) => {
    const silent = [first, other].filter((each) => each.row.occupies !== 'shared');
    return {
      activity: first.activity,
      other: other.activity,
      kind: 'same-place',
      windows: [...windows],
      ...sayOfPlan('at-one-place', {
        activity: first.activity,
        other: other.activity,
        windows: [...windows],
        silent: silent.map((each) => each.activity),
      }),
    };
  });
}

/** Whether two activities meet at one place and nobody said that they may. */
function isUnsaid(activity: Activity, other: Activity): boolean {
  if (activity.occupies === 'alone' || other.occupies === 'alone') return false;
  if (activity.occupies === 'shared' && other.occupies === 'shared') return false;
  return samePlace(activity, other);
}

/** A stop of repeated work that pays for making safe says that the line is fit to run after it. */
function paysMakeSafe({ work }: Activity): boolean {
  return work.kind === 'units' && work.makeSafeMinutes > 0;
}

const idsOf = (some: readonly Activity[]): readonly string[] => some.map(({ id }) => id);
