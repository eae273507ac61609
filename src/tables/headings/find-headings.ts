// Which line of a file holds its headings: titles may stand above them, and a row of data may look like them.
import { tableKinds, type TableKind } from '../../model/index.js';
import { headingsOf } from './fields.js';
import { matchColumns } from './match-columns.js';
import type { Records } from '../text/records.js';

/** How many lines a title may have above the headings. */
const longestTitle = 20;

/** A cell that no heading is: a number, a date, a time of day, perhaps with a unit. */
const valueCell =
  /^[+-]?\d[\d.,:/ -]{0,20}( ?[a-z%]{1,3})?$|^\d{1,4}[-/. ][\da-z]{1,9}[-/. ]\d{1,4}/i;

interface Found {
  readonly kind: TableKind;
  readonly line: number;
  /** Columns that are read, more for those headed as we head them. */
  readonly score: number;
  readonly whole: boolean;
}

/**
 * The line of the headings and the kind of table they are of. A line with cells of data is none; of those left the one
 * that most columns are read under, the first of several. `undefined` where no line has all the columns its kind needs
 * or, at least, two columns that are read.
 */
export function findHeadings(
  { rows }: Pick<Records, 'rows'>,
  kinds: readonly TableKind[] = tableKinds,
): { readonly line: number; readonly kind: TableKind; readonly whole: boolean } | undefined {
  let best: Found | undefined;
  for (const { cells, line } of rows.slice(0, longestTitle)) {
    const filled = cells.filter((cell) => cell.trim() !== '');
    if (filled.length === 0 || filled.some((cell) => valueCell.test(cell.trim()))) continue;
    const found = kindOf(cells, kinds);
    if (found && better(found, best)) best = { ...found, line };
  }
  return best;
}

const better = (a: Omit<Found, 'line'>, b: Found | undefined): boolean =>
  !b || (a.whole && !b.whole) || (a.whole === b.whole && a.score > b.score);

/** The kind that most of some headings are of, those first that have all they cannot do without. */
function kindOf(
  columns: readonly string[],
  kinds: readonly TableKind[],
): Omit<Found, 'line'> | undefined {
  let best: Omit<Found, 'line'> | undefined;
  for (const kind of kinds) {
    const match = matchColumns(columns, kind);
    const names = headingsOf(kind) as readonly string[];
    const own = columns.filter((column) => names.includes(column.trim().toLowerCase())).length;
    const whole = match.missing.length === 0;
    const score = match.fields.size + own;
    if (match.fields.size < (whole ? 1 : 2)) continue;
    if (!best || (whole && !best.whole) || (whole === best.whole && score > best.score))
      best = { kind, score, whole };
  }
  return best;
}
