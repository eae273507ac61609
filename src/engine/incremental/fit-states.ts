import type { FitVerdict } from '../../planner/fit/types.js';

const noStates = new Int32Array(0);
const statesBy = new WeakMap<readonly FitVerdict[], Int32Array>();

/** Says of verdicts what their quick states are. */
export function rememberStates(fits: readonly FitVerdict[], states: Int32Array): void {
  statesBy.set(fits, states);
}

/**
 * The quick states of verdicts, without asking each.
 *
 * @throws {TypeError} When they are not those that a memory gave.
 */
export function statesOf(fits: readonly FitVerdict[]): Int32Array {
  const states = fits.length === 0 ? noStates : statesBy.get(fits);
  if (!states) throw new TypeError('verdicts of another make cannot travel');
  return states;
}
