/** Milliseconds from a fixed moment: what a search is timed by. The one clock of the engine; all below is given it. */
export const clock = (): number => performance.now();
