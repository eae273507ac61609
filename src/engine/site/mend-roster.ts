import { isoText, localText, localTimeOf, MINUTE, type Instant } from '../../calendar/index.js';
import type { Assignment, TableText } from '../../model/index.js';
import { changed, missingCompetences, type RosterChange } from '../../rules/people/index.js';
import { columnOf } from '../column-of.js';

/** What changes of a roster do to its table: cells to set, then rows to take out. Places are those of the table. */
export interface RosterMend {
  readonly cells: readonly {
    readonly row: number;
    readonly column: number;
    readonly text: string;
  }[];
  readonly removeRows: readonly number[];
}

/**
 * What changes of the roster do to its table: only the cells that they change are set, and dropped turns leave.
 *
 * @param turns The turns as they were read from this table.
 * @throws {RangeError} When a change names a turn that the table does not hold, or gives one to a crew without the competence.
 */
export function rosterMend(
  table: TableText,
  turns: readonly Assignment[],
  changes: readonly RosterChange[],
  zone: string,
): RosterMend {
  const cells: { row: number; column: number; text: string }[] = [];
  const rowOf = rowsByTurn(table);
  const dropped = new Set<number>();
  let now: readonly Assignment[] = turns;
  for (const change of changes) {
    const row = rowOf.get(change.turn);
    if (row === undefined) throw new RangeError(`the roster has no turn "${change.turn}"`);
    const before = now.find((assignment) => assignment.id === change.turn);
    if (before && change.change === 'give to') {
      const lacking = missingCompetences(change.crew, before, turns);
      if (lacking.length > 0)
        throw new RangeError(
          `${change.turn} needs ${lacking.join(', ')}: the roster shows none of ${change.crew}`,
        );
    }
    now = changed(now, change);
    const after = now.find((assignment) => assignment.id === change.turn);
    if (!after) {
      dropped.add(row);
      continue;
    }
    const write = (field: string, text: string): void => {
      const column = columnOf(table, 'roster', field);
      if (column !== undefined) cells.push({ row, column, text });
    };
    if (after.start !== before?.start) write('start', momentCell(after.start, zone));
    if (after.end !== before?.end) write('end', momentCell(after.end, zone));
    if (after.crew !== before?.crew)
      write(cellOf(table, row, 'person') === '' ? 'crew' : 'person', after.crew);
  }
  return { cells, removeRows: [...dropped] };
}

const cellOf = (table: TableText, row: number, field: string): string => {
  const column = columnOf(table, 'roster', field);
  return column === undefined ? '' : (table.rows[row]?.[column]?.trim() ?? '');
};

/** Rows by the name of their turn; one without a name is called by who works it and its number among theirs. */
function rowsByTurn(table: TableText): ReadonlyMap<string, number> {
  const counts = new Map<string, number>();
  const found = new Map<string, number>();
  table.rows.forEach((_, row) => {
    const who = cellOf(table, row, 'person') || cellOf(table, row, 'crew');
    const number = (counts.get(who) ?? 0) + 1;
    counts.set(who, number);
    found.set(cellOf(table, row, 'turn') || `${who} ${number}`, row);
  });
  return found;
}

/** A moment as a cell holds it: the clock on site, with its offset only where clocks show that time twice. */
function momentCell(at: Instant, zone: string): string {
  const text = localText(localTimeOf(at, zone));
  const isTwice = [-120, -60, -30, 30, 60, 120].some(
    (minutes) => localText(localTimeOf(at + minutes * MINUTE, zone)) === text,
  );
  return isTwice ? `${text}${isoText(at, zone).slice(-6)}` : text;
}
