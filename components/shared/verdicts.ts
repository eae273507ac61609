import type { FitVerdict } from '../../src/planner/fit/types.js';

// Verdicts stand by packages, then windows: those of one package or one window are found by their place, since a large
// plan has a hundred thousand of them and they are looked through at every edit.

/** How many windows each package is held against. */
function stride(fits: readonly FitVerdict[]): number {
  const first = fits[0]?.package;
  const next = fits.findIndex((fit) => fit.package !== first);
  return next < 0 ? fits.length : next;
}

/** Every package against one window; none where the window is in no verdict. */
export function verdictsInWindow(fits: readonly FitVerdict[], window: string): FitVerdict[] {
  const step = stride(fits);
  const column = fits.slice(0, step).findIndex((fit) => fit.window === window);
  if (column < 0) return [];
  return Array.from({ length: fits.length / step }, (_, row) => fits[row * step + column]!);
}

/** One package against every window; none where the package is in no verdict. */
export function verdictsOfPackage(
  fits: readonly FitVerdict[],
  pack: string,
): readonly FitVerdict[] {
  const step = stride(fits);
  for (let at = 0; at < fits.length; at += step)
    if (fits[at]!.package === pack) return fits.slice(at, at + step);
  return [];
}

/** One package against one window. */
export function verdictAt(
  fits: readonly FitVerdict[],
  at: { readonly package: string; readonly window: string },
): FitVerdict | undefined {
  return verdictsOfPackage(fits, at.package).find((verdict) => verdict.window === at.window);
}

const counts = new WeakMap<readonly FitVerdict[], number>();

/** How many packages fit a window, over all pairs. */
export function countFits(fits: readonly FitVerdict[]): number {
  let count = counts.get(fits);
  if (count === undefined) {
    count = 0;
    for (const fit of fits) if (fit.fits) count += 1;
    counts.set(fits, count);
  }
  return count;
}
