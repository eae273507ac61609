import type { SheetState } from '../sheet-state.js';

/** Sorts rows by the focused column. Changes only the view, never the file. */
export function sortBy(
  sheet: SheetState,
  down: boolean,
  column = sheet.fileColumn(sheet.at.column),
): void {
  if (column < 0) return;
  sheet.show({ ...sheet.wish, sort: { column, down } });
  const heading = sheet.headingAt(column);
  sheet.announcement = (down ? sheet.words.sortedDown : sheet.words.sortedUp)(heading);
}

export function unsort(sheet: SheetState): void {
  sheet.show({ ...sheet.wish, sort: undefined });
  sheet.announcement = sheet.words.asInFile;
}

/** Shows only rows whose cell contains the text; an empty text removes the filter of that column. */
export function filterBy(sheet: SheetState, column: number, text: string): void {
  const others = sheet.wish.filters.filter((filter) => filter.column !== column);
  const filters = text === '' ? others : [...others, { column, text }];
  sheet.show({ ...sheet.wish, filters });
  announceShown(sheet);
}

export function filterFaults(sheet: SheetState, onlyFaults: boolean): void {
  sheet.show({ ...sheet.wish, onlyFaults });
  announceShown(sheet);
}

export function unfilter(sheet: SheetState): void {
  sheet.show({ ...sheet.wish, filters: [], onlyFaults: false });
  announceShown(sheet);
}

/** Sorts and filters again by the current cells. */
export function refreshView(sheet: SheetState): void {
  sheet.show(sheet.wish);
  announceShown(sheet);
}

export const isFiltered = ({ wish }: SheetState): boolean =>
  wish.filters.length > 0 || wish.onlyFaults;

function announceShown(sheet: SheetState): void {
  sheet.announcement = sheet.words.rowsShown(sheet.size.rows, sheet.table.rows.length);
}
