import { Board, decide, isProvablyInfeasible, type Problem, type Visit } from '../fit/index.js';
import { fewestHitting } from './hitting.js';
import { usableWindows } from '../search/objectives.js';
import { cappedOf, withinWindows, type Caps } from '../search/parts.js';

export interface WindowBound {
  /** No answer within the caps that places everything uses fewer windows. */
  readonly atLeast: number;
  /** An answer within the caps that uses no more, where one was found. */
  readonly visits?: readonly Visit[];
  /** Choices of so many windows of which nothing shows that they do not do. */
  readonly open: readonly (readonly number[])[];
}

export interface WindowBoundOptions {
  readonly caps: Caps;
  /** So many are enough to know of: an answer with so many is known. */
  readonly enough: number;
  readonly stop: () => boolean;
}

/** Places looked at for a schedule in one choice of windows. */
const STEPS = 1500;
/** Choices looked for that may or may not do. */
const OPEN = 10;

/**
 * The fewest windows in which everything may find its place within the caps.
 *
 * A choice of windows is taken that holds one of each set of windows known to be needed, as few as will do. Where it
 * shows that everything cannot be done in those, windows are added to it as long as that still shows: one of the
 * others is then needed, whatever else is chosen. A choice with which nothing of the kind shows is searched for a
 * schedule; where that comes to no end the bound stays as it is, and a few more such choices are looked for.
 */
export function windowBound(problem: Problem, options: WindowBoundOptions): WindowBound {
  const { caps, enough, stop } = options;
  const capped = cappedOf(problem, caps);
  const windows = usableWindows(problem);
  const needed: number[][] = [];
  let atLeast = 0;
  const within = (chosen: ReadonlySet<number>): Problem => {
    const allowed = new Uint8Array(problem.windows.length);
    for (const window of chosen) allowed[window] = 1;
    return withinWindows(capped, allowed);
  };
  const fails = (chosen: ReadonlySet<number>): boolean =>
    isProvablyInfeasible(new Board(within(chosen)));

  // All together cannot do it: then nothing is proven of how many could.
  const open: (readonly number[])[] = [];
  if (fails(new Set(windows))) return { atLeast, open };
  while (!stop()) {
    const hitting = fewestHitting(needed);
    if (open.length === 0) atLeast = Math.max(atLeast, hitting.atLeast);
    if (atLeast >= enough || hitting.chosen.length > atLeast) break;
    const chosen = new Set(hitting.chosen);
    if (fails(chosen)) {
      for (const window of windows) {
        if (chosen.has(window)) continue;
        if (stop()) return { atLeast, open };
        chosen.add(window);
        if (!fails(chosen)) chosen.delete(window);
      }
    } else {
      const { visits, exhausted } = decide(within(chosen), STEPS);
      if (visits) return { atLeast, visits, open };
      if (!exhausted) open.push(hitting.chosen);
      if (open.length >= OPEN) break;
    }
    const others = windows.filter((window) => !chosen.has(window));
    if (others.length === 0) break;
    needed.push(others);
  }
  return { atLeast, open };
}
