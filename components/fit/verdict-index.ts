import type { PackageSummary } from '../../src/engine/types.js';
import type { FitVerdict } from '../../src/planner/fit/types.js';
import type { AccessWindow } from '../../src/model/index.js';

/**
 * Verdicts by package and window. They come by packages, then windows, in plan order, and are then found by their place;
 * only where they do not are they all looked through.
 */
export class VerdictIndex {
  readonly #fits: readonly FitVerdict[];
  readonly #packages: readonly PackageSummary[];
  readonly #windows: readonly AccessWindow[];
  readonly #rows: readonly number[];
  readonly #columns: readonly number[];
  #named: Map<string, Map<string, FitVerdict>> | undefined;

  /** `rows` and `columns`: the packages and windows that the map shows, by their place in the plan; all in its order without. */
  constructor(
    fits: readonly FitVerdict[],
    packages: readonly PackageSummary[],
    windows: readonly AccessWindow[],
    rows: readonly number[] = [...packages.keys()],
    columns: readonly number[] = [...windows.keys()],
  ) {
    this.#fits = fits;
    this.#packages = packages;
    this.#windows = windows;
    this.#rows = rows;
    this.#columns = columns;
  }

  /** The verdict on a row and column of the map; `undefined`: none came. */
  at(row: number, column: number): FitVerdict | undefined {
    const [r, c] = [this.#rows[row] ?? -1, this.#columns[column] ?? -1];
    const pack = this.#packages[r]?.id;
    const window = this.#windows[c]?.id;
    if (pack === undefined || window === undefined) return undefined;
    const there = this.#fits[r * this.#windows.length + c];
    if (there?.package === pack && there.window === window) return there;
    this.#named ??= byName(this.#fits);
    return this.#named.get(pack)?.get(window);
  }
}

function byName(fits: readonly FitVerdict[]): Map<string, Map<string, FitVerdict>> {
  const named = new Map<string, Map<string, FitVerdict>>();
  for (const fit of fits) {
    let own = named.get(fit.package);
    if (!own) named.set(fit.package, (own = new Map<string, FitVerdict>()));
    own.set(fit.window, fit);
  }
  return named;
}
