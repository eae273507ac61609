import { placesIn, unmoved } from '../../edits/index.js';
import {
  LedgerCache,
  mostThatFits,
  PairVerdict,
  quickStates,
  stateOf,
  type Explainer,
  type FitVerdict,
  type MostThatFits,
} from '../../planner/fit/index.js';
import type { AccessWindow, Plan, Resource } from '../../model/index.js';
import { rememberStates } from './fit-states.js';
import type { Packed } from './package-cache.js';

/**
 * Pairs of package and window up to which every one is looked at: 2,000 windows against 417 packages take about 2 s and
 * 90 MB. Beyond, none is, and who shows them says so.
 */
export const MOST_PAIRS = 2_000_000;

/** Works out all of a verdict. */
export type Explain = (
  plan: Plan,
  packed: Packed,
  window: AccessWindow,
  book: LedgerCache,
) => FitVerdict;

/** Every pair, by packages, then windows. */
interface Grid {
  readonly packages: readonly Packed[];
  readonly windows: readonly AccessWindow[];
  readonly states: Int32Array;
  readonly fits: readonly PairVerdict[];
}

const noPairs: Grid = { packages: [], windows: [], states: new Int32Array(0), fits: [] };

/** The quick states of a package, given by its place in the list, in the windows at some places. */
type FindStates = (pack: number, windows: readonly number[]) => ArrayLike<number>;

/** Verdicts of plans that follow one another: a pair is looked at again only where package, window or rules changed. */
export class FitCache {
  #plan: Plan | undefined;
  #basis: Basis | undefined;
  #grid = noPairs;
  readonly #explain: Explain | undefined;

  /** Without `explain` there are no verdicts to read: their list holds nothing, and is only for `statesOf`. */
  constructor(explain?: Explain) {
    this.#explain = explain;
  }

  /**
   * Every pair, by packages, then windows, in plan order; none where there are more than `MOST_PAIRS`. A package that
   * has not changed must be the same object as before.
   *
   * @param known The states of all pairs, where another thread has worked them out.
   */
  of(plan: Plan, packages: readonly Packed[], known?: Int32Array): readonly FitVerdict[] {
    const { windows } = plan;
    const { basis, touched } = this.#basisFor(plan);
    const find: FindStates = known
      ? (pack, places) => places.map((at) => known[pack * windows.length + at]!)
      : (pack, places) => basis.states(packages[pack]!, picked(windows, places));
    const pairs = packages.length * windows.length;
    this.#grid =
      pairs === 0 || pairs > MOST_PAIRS
        ? noPairs
        : gridOf({ packages, windows }, this.#grid, { basis, touched, find });
    return this.#grid.fits;
  }

  /** What verdicts of this plan stand on, and which packages see other resources than in the plan before. */
  #basisFor(plan: Plan): { basis: Basis; touched: (packed: Packed) => boolean } {
    const before = this.#plan;
    const known = this.#basis;
    this.#plan = plan;
    const sameTime =
      before?.rules === plan.rules && before.zone === plan.zone && before.curing === plan.curing;
    if (known && sameTime && before.resources === plan.resources)
      return { basis: known, touched: () => false };
    const basis = (this.#basis = new Basis(plan, this.#explain, sameTime ? known : undefined));
    if (!known || !sameTime) return { basis, touched: () => true };
    const changed = changedResources(before.resources, plan.resources);
    return {
      basis,
      touched: ({ activities }) =>
        activities.some((activity) =>
          activity.resources.some((need) => changed.has(need.resource)),
        ),
    };
  }
}

/** What verdicts stand on beside package and window. Of its plan only rules, zone, curing and resources matter. */
class Basis implements Explainer<Packed> {
  readonly #plan: Plan;
  readonly #explain: Explain | undefined;
  readonly #book: LedgerCache;

  constructor(plan: Plan, explain: Explain | undefined, like?: Basis) {
    this.#plan = plan;
    this.#explain = explain;
    this.#book = new LedgerCache(plan, like && like.#book);
  }

  get explains(): boolean {
    return this.#explain !== undefined;
  }

  states({ activities, rowsLeftOut }: Packed, windows: readonly AccessWindow[]): Int32Array {
    return rowsLeftOut > 0
      ? new Int32Array(windows.length).fill(stateOf('rows-left-out'))
      : quickStates(this.#plan, activities, windows, this.#book);
  }

  explain(packed: Packed, window: AccessWindow): FitVerdict {
    if (!this.#explain) throw new TypeError('this verdict is not for reading');
    return this.#explain(this.#plan, packed, window, this.#book);
  }

  most({ activities, rowsLeftOut }: Packed, window: AccessWindow): MostThatFits | undefined {
    return rowsLeftOut > 0 ? undefined : mostThatFits(this.#plan, activities, window, this.#book);
  }
}

interface Means {
  readonly basis: Basis;
  readonly touched: (packed: Packed) => boolean;
  readonly find: FindStates;
}

function gridOf(
  { packages, windows }: Pick<Grid, 'packages' | 'windows'>,
  before: Grid,
  { basis, touched, find }: Means,
): Grid {
  const rows = placesIn(before.packages, packages).map((place, at) =>
    touched(packages[at]!) ? -1 : place,
  );
  const columns = placesIn(before.windows, windows);
  const width = windows.length;
  const old = before.windows.length;
  if (unmoved(rows, before.packages.length) && unmoved(columns, old)) return before;
  const every = [...windows.keys()];
  const fresh = every.filter((at) => columns[at]! < 0);
  // Where nothing changed its place, as with most edits, all is copied at once.
  const inPlace =
    packages.length === before.packages.length &&
    width === old &&
    [rows, columns].every((places) => places.every((place, at) => place === at || place < 0));
  const states = inPlace ? before.states.slice() : new Int32Array(packages.length * width);
  const fits = inPlace ? before.fits.slice() : new Array<PairVerdict>(states.length);
  packages.forEach((packed, pack) => {
    const row = rows[pack]! * old;
    const into = pack * width;
    if (row >= 0 && !inPlace)
      for (let at = 0; at < width; at += 1) {
        const column = columns[at]!;
        if (column < 0) continue;
        states[into + at] = before.states[row + column]!;
        fits[into + at] = before.fits[row + column]!;
      }
    const asked = row < 0 ? every : fresh;
    const found = asked.length > 0 ? find(pack, asked) : [];
    asked.forEach((at, place) => {
      const state = (states[into + at] = found[place]!);
      if (basis.explains) fits[into + at] = new PairVerdict(packed, windows[at]!, state, basis);
    });
  });
  rememberStates(fits, states);
  return { packages, windows, states, fits };
}

const picked = <T>(list: readonly T[], places: readonly number[]): readonly T[] =>
  places.length === list.length ? list : places.map((at) => list[at]!);

function changedResources(before: readonly Resource[], after: readonly Resource[]): Set<string> {
  const texts = (list: readonly Resource[]): Map<string, string> =>
    new Map(list.map((resource, at) => [resource.id, `${at} ${JSON.stringify(resource)}`]));
  const [old, now] = [texts(before), texts(after)];
  const changed = new Set<string>();
  for (const id of [...old.keys(), ...now.keys()]) if (old.get(id) !== now.get(id)) changed.add(id);
  return changed;
}
