import { shareOf } from '../../src/engine/index.js';
import type { FitVerdict } from '../../src/planner/fit/types.js';

/** Places of packages and windows in the plan, in the order in which a map shows them. */
export interface MapOrder {
  readonly rows: readonly number[];
  readonly columns: readonly number[];
}

/** As the plan has them. */
export function asPlanned(packages: number, windows: number): MapOrder {
  return { rows: [...Array(packages).keys()], columns: [...Array(windows).keys()] };
}

/**
 * What can go first: by how many whole packages fit, then by how much of the others goes. Where that is not `known`, by how
 * many are short of nothing but time; then nothing is worked out. Verdicts stand by packages, then windows.
 */
export function goesFirst(
  fits: readonly FitVerdict[],
  packages: number,
  windows: number,
  known: boolean,
): MapOrder {
  const rows = new Float64Array(packages);
  const columns = new Float64Array(windows);
  // What goes in part is less than one of each pair, so that no sum of parts comes before a whole one.
  const whole = Math.max(packages, windows) + 1;
  for (let row = 0; row < packages; row += 1)
    for (let column = 0; column < windows; column += 1) {
      const verdict = fits[row * windows + column];
      if (!verdict) continue;
      const worth = verdict.fits ? whole : known ? part(verdict) : isShortOfTime(verdict) ? 1 : 0;
      rows[row]! += worth;
      columns[column]! += worth;
    }
  const { rows: byRow, columns: byColumn } = asPlanned(packages, windows);
  return {
    rows: byRow.toSorted((a, b) => rows[b]! - rows[a]!),
    columns: byColumn.toSorted((a, b) => columns[b]! - columns[a]!),
  };
}

const part = ({ most }: FitVerdict): number => (most ? shareOf(most) : 0);

/** Read without working anything out. */
function isShortOfTime(verdict: FitVerdict): boolean {
  return verdict.settled === undefined
    ? verdict.spareMinutes !== null
    : verdict.firstCode === undefined || verdict.firstCode === 'too-short';
}
