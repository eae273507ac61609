/** What a test with only some causes left in force says. */
export interface Tested {
  readonly fits: boolean;
  /** A no is certain; a yes is. */
  readonly proven: boolean;
}

export interface Causes<C> {
  /** Enough for the no by themselves; without any one of them it fits. Empty where no cause is needed for it. */
  readonly causes: readonly C[];
  /** The no with only these in force is certain. */
  readonly proven: boolean;
}

/** Up to so many causes every pair of them is tried before more are thought to be needed. */
const PAIRS = 6;

/**
 * The fewest causes found that are enough for a no, out of all that there are.
 *
 * One alone is looked for, then two; then each is dropped in turn and left out for good where the no stands without
 * it, so that what stays is needed. Fewer than that may exist where they are three or more.
 *
 * @param holds Whether it fits with only these causes in force. More causes never turn a no into a yes.
 */
export function fewestCauses<C>(
  all: readonly C[],
  holds: (some: readonly C[]) => Tested,
): Causes<C> {
  const none = holds([]);
  if (!none.fits) return { causes: [], proven: none.proven };
  for (const item of all) {
    const test = holds([item]);
    if (!test.fits) return { causes: [item], proven: test.proven };
  }
  if (all.length <= PAIRS)
    for (const [i, cause] of all.entries())
      for (const other of all.slice(i + 1)) {
        const test = holds([cause, other]);
        if (!test.fits) return { causes: [cause, other], proven: test.proven };
      }
  let causes = all;
  let last = holds(all);
  if (last.fits) return { causes: [], proven: false };
  for (const item of all) {
    const fewer = causes.filter((other) => other !== item);
    const test = holds(fewer);
    if (test.fits) continue;
    causes = fewer;
    last = test;
  }
  return { causes, proven: last.proven };
}
