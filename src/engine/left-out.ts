import type { FitVerdict } from '../planner/fit/types.js';

/** The verdict on what could be read of a package, which never says that the whole fits. */
export function doubted(verdict: FitVerdict, rows: number): FitVerdict {
  const text = `${rows} ${rows === 1 ? 'row' : 'rows'} of ${verdict.package} could not be read: what is judged is the rest`;
  return {
    ...verdict,
    fits: false,
    spareMinutes: null,
    reasons: [{ code: 'rows-left-out', text }, ...verdict.reasons],
  };
}
