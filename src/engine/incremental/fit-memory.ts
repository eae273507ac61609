import {
  LedgerBook,
  PairVerdict,
  quickStates,
  stateOf,
  verdictOf,
  type FitVerdict,
} from '../../fit/index.js';
import type { AccessWindow, Activity, Plan, Resource } from '../../model/index.js';
import { doubted } from '../left-out.js';

/** Pairs of package and window up to which every one is looked at; beyond, only those asked about. */
export const MOST_PAIRS = 200_000;

/** A package with all its activities in file order, and how many of its rows could not be read. */
export interface Packed {
  readonly id: string;
  readonly activities: readonly Activity[];
  readonly rowsLeftOut: number;
}

interface Row {
  readonly packed: Packed;
  readonly windows: readonly AccessWindow[];
  readonly states: Int32Array;
  readonly verdicts: readonly PairVerdict[];
}

/** Verdicts of plans that follow one another: a pair is looked at again only where package, window or rules changed. */
export class FitMemory {
  #plan: Plan | undefined;
  #book: LedgerBook | undefined;
  #rows = new Map<string, Row>();
  #fits: readonly FitVerdict[] = [];

  /** Every pair, by packages, then windows, in plan order; none where there are more than `MOST_PAIRS`. */
  of(plan: Plan, packages: readonly Packed[]): readonly FitVerdict[] {
    const { book, touched } = this.#bookFor(plan);
    if (packages.length * plan.windows.length > MOST_PAIRS) {
      this.#rows.clear();
      return (this.#fits = this.#fits.length === 0 ? this.#fits : []);
    }
    const rows = new Map<string, Row>();
    const moves = new Moves();
    let same = packages.length === this.#rows.size;
    for (const packed of packages) {
      const before = touched(packed.activities) ? undefined : this.#rows.get(packed.id);
      const row = rowOf(plan, packed, book, before, moves);
      rows.set(packed.id, row);
      same &&= row === before;
    }
    same &&= [...rows.keys()].every(
      (id, at) => this.#fits[at * plan.windows.length]?.package === id,
    );
    this.#rows = rows;
    if (!same) this.#fits = [...rows.values()].flatMap((row) => row.verdicts);
    return this.#fits;
  }

  /** All of one verdict. */
  explain(plan: Plan, packed: Packed, window: AccessWindow): FitVerdict {
    return explained(plan, packed, window, this.#bookFor(plan).book);
  }

  /** The book for a plan, and which packages see other resources than in the plan before. */
  #bookFor(plan: Plan): {
    book: LedgerBook;
    touched: (activities: readonly Activity[]) => boolean;
  } {
    const before = this.#plan;
    const known = this.#book;
    this.#plan = plan;
    const sameTime =
      before?.rules === plan.rules && before.zone === plan.zone && before.curing === plan.curing;
    if (known && sameTime && before.resources === plan.resources)
      return { book: known, touched: () => false };
    const book = (this.#book = new LedgerBook(plan, sameTime ? known : undefined));
    if (!known || !sameTime) return { book, touched: () => true };
    const changed = changedResources(before.resources, plan.resources);
    return {
      book,
      touched: (activities) =>
        activities.some((one) => one.resources.some((need) => changed.has(need.resource))),
    };
  }
}

function changedResources(before: readonly Resource[], after: readonly Resource[]): Set<string> {
  const texts = (list: readonly Resource[]): Map<string, string> =>
    new Map(list.map((one, at) => [one.id, `${at} ${JSON.stringify(one)}`]));
  const [old, now] = [texts(before), texts(after)];
  const changed = new Set<string>();
  for (const id of [...old.keys(), ...now.keys()]) if (old.get(id) !== now.get(id)) changed.add(id);
  return changed;
}

/** Where each window was in another list of windows. */
class Moves {
  readonly #known = new Map<readonly AccessWindow[], ReadonlyMap<AccessWindow, number>>();

  from(windows: readonly AccessWindow[]): ReadonlyMap<AccessWindow, number> {
    let known = this.#known.get(windows);
    if (!known)
      this.#known.set(windows, (known = new Map(windows.map((one, at) => [one, at] as const))));
    return known;
  }
}

function rowOf(
  plan: Plan,
  packed: Packed,
  book: LedgerBook,
  before: Row | undefined,
  moves: Moves,
): Row {
  const { windows } = plan;
  const samePack =
    before?.packed.activities === packed.activities &&
    before.packed.rowsLeftOut === packed.rowsLeftOut;
  if (samePack && before.windows === windows) return before;
  const was = samePack ? moves.from(before.windows) : undefined;
  const fresh = was ? windows.filter((one) => !was.has(one)) : windows;
  const found =
    packed.rowsLeftOut > 0
      ? new Int32Array(fresh.length).fill(stateOf('rows-left-out'))
      : quickStates(plan, packed.activities, fresh, book);
  const states = new Int32Array(windows.length);
  let next = 0;
  const verdicts = windows.map((window, at) => {
    const old = was?.get(window);
    if (old !== undefined) {
      states[at] = before!.states[old]!;
      return before!.verdicts[old]!;
    }
    states[at] = found[next]!;
    next += 1;
    return new PairVerdict(packed.id, window.id, states[at], () =>
      explained(plan, packed, window, book),
    );
  });
  return { packed, windows, states, verdicts };
}

function explained(
  plan: Plan,
  { id, activities, rowsLeftOut }: Packed,
  window: AccessWindow,
  book: LedgerBook,
): FitVerdict {
  const verdict = verdictOf(plan, id, activities, window, book);
  return rowsLeftOut > 0 ? doubted(verdict, rowsLeftOut) : verdict;
}
