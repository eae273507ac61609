import { isRowsChange, type Edit, type PartChange, type RowsChange, type Splice } from './edit.js';
import { sameJson, sameRows } from './same.js';

/**
 * An edit made for a document, as it stands once another edit of the same document is in. `undefined` where the two
 * disagree: they change the same value or the same rows, or one moves columns under the other's rows.
 *
 * What both did alike is done once. Of two rows put in at the same place, `edit`'s come after the other's, or before
 * them where `tie` says so.
 */
export function rebaseEdit(
  edit: Edit,
  over: Edit,
  tie: 'after' | 'before' = 'after',
): Edit | undefined {
  const changes: (RowsChange | PartChange)[] = [];
  for (const change of edit.changes) {
    const moved = rebaseChange(change, over, tie);
    if (moved === 'refused') return undefined;
    if (moved !== 'done') changes.push(moved);
  }
  return { label: edit.label, changes };
}

type Moved = RowsChange | PartChange | 'done' | 'refused';

function rebaseChange(change: RowsChange | PartChange, over: Edit, tie: 'after' | 'before'): Moved {
  let moved: Moved = change;
  for (const other of over.changes) {
    moved = isRowsChange(moved) ? rebaseRows(moved, other, tie) : rebasePart(moved, other);
    if (moved === 'done' || moved === 'refused') return moved;
  }
  return moved;
}

function rebasePart(change: PartChange, other: RowsChange | PartChange): Moved {
  if (isRowsChange(other)) return touchesRows(change, other.table) ? 'refused' : change;
  if (!within(change.part, other.part) && !within(other.part, change.part)) return change;
  const alike = change.part.length === other.part.length && sameJson(change.after, other.after);
  return alike ? 'done' : 'refused';
}

function rebaseRows(
  change: RowsChange,
  other: RowsChange | PartChange,
  tie: 'after' | 'before',
): Moved {
  if (!isRowsChange(other)) return touchesRows(other, change.table) ? 'refused' : change;
  if (other.table !== change.table) return change;
  const splices: Splice[] = [];
  for (const splice of change.splices) {
    let shift = 0;
    let done = false;
    for (const theirs of other.splices) {
      const order = orderOf(splice, theirs, tie);
      if (order === 'refused') return 'refused';
      if (order === 'alike') done = true;
      if (order !== 'before') shift += theirs.added.length - theirs.removed.length;
    }
    if (!done) splices.push({ ...splice, at: splice.at + shift });
  }
  return splices.length === 0 ? 'done' : { table: change.table, splices };
}

/** Whether `splice` lies before or after `theirs`, is the very same change, or gets in its way. */
function orderOf(
  splice: Splice,
  theirs: Splice,
  tie: 'after' | 'before',
): 'before' | 'after' | 'alike' | 'refused' {
  const end = splice.at + splice.removed.length;
  const theirEnd = theirs.at + theirs.removed.length;
  if (splice.at === theirs.at && end === theirEnd) {
    if (splice.removed.length === 0) return tie;
    return sameRows(splice.added, theirs.added) ? 'alike' : 'refused';
  }
  if (end <= theirs.at) return 'before';
  return theirEnd <= splice.at ? 'after' : 'refused';
}

/** New columns at the end leave the cells of rows where they are; any other change of columns moves them. */
function touchesRows({ part, before, after }: PartChange, table: string): boolean {
  if (part[0] !== 'tables' || part[1] !== table) return false;
  if (part.length === 2 || part[2] === 'rows') return true;
  if (part[2] !== 'columns') return false;
  return !(
    Array.isArray(before) &&
    Array.isArray(after) &&
    before.every((heading, index) => heading === after[index])
  );
}

function within(inner: readonly string[], outer: readonly string[]): boolean {
  return outer.every((key, index) => key === inner[index]);
}
