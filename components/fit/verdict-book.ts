import type { PackageSummary } from '../../src/engine/types.js';
import type { FitVerdict } from '../../src/planner/fit/types.js';
import type { AccessWindow } from '../../src/model/index.js';

/**
 * Verdicts by package and window. They come by packages, then windows, in plan order, and are then found by their place;
 * only where they do not are they all looked through.
 */
export class VerdictBook {
  readonly #fits: readonly FitVerdict[];
  readonly #packages: readonly PackageSummary[];
  readonly #windows: readonly AccessWindow[];
  #named: Map<string, Map<string, FitVerdict>> | undefined;

  constructor(
    fits: readonly FitVerdict[],
    packages: readonly PackageSummary[],
    windows: readonly AccessWindow[],
  ) {
    this.#fits = fits;
    this.#packages = packages;
    this.#windows = windows;
  }

  /** The verdict on a row and column of the map; `undefined`: none came. */
  at(row: number, column: number): FitVerdict | undefined {
    const pack = this.#packages[row]?.id;
    const window = this.#windows[column]?.id;
    if (pack === undefined || window === undefined) return undefined;
    const there = this.#fits[row * this.#windows.length + column];
    if (there?.package === pack && there.window === window) return there;
    this.#named ??= byName(this.#fits);
    return this.#named.get(pack)?.get(window);
  }
}

function byName(fits: readonly FitVerdict[]): Map<string, Map<string, FitVerdict>> {
  const named = new Map<string, Map<string, FitVerdict>>();
  for (const one of fits) {
    let own = named.get(one.package);
    if (!own) named.set(one.package, (own = new Map<string, FitVerdict>()));
    own.set(one.window, one);
  }
  return named;
}
