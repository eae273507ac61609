import type { SheetState } from '../sheet-state.js';

/** Rows by the column with the focus. Only what is shown changes, never the file. */
export function sortBy(
  sheet: SheetState,
  down: boolean,
  column = sheet.fileColumn(sheet.at.column),
): void {
  if (column < 0) return;
  sheet.show({ ...sheet.wish, sort: { column, down } });
  const heading = sheet.headingAt(column);
  sheet.told = (down ? sheet.words.sortedDown : sheet.words.sortedUp)(heading);
}

export function unsort(sheet: SheetState): void {
  sheet.show({ ...sheet.wish, sort: undefined });
  sheet.told = sheet.words.asInFile;
}

/** Only rows whose cell holds the text; an empty text lifts the filter of that column. */
export function filterBy(sheet: SheetState, column: number, text: string): void {
  const others = sheet.wish.filters.filter((filter) => filter.column !== column);
  const filters = text === '' ? others : [...others, { column, text }];
  sheet.show({ ...sheet.wish, filters });
  tellShown(sheet);
}

export function filterFaults(sheet: SheetState, onlyFaults: boolean): void {
  sheet.show({ ...sheet.wish, onlyFaults });
  tellShown(sheet);
}

export function unfilter(sheet: SheetState): void {
  sheet.show({ ...sheet.wish, filters: [], onlyFaults: false });
  tellShown(sheet);
}

/** Sort and filter over what the cells hold now. */
export function refreshView(sheet: SheetState): void {
  sheet.show(sheet.wish);
  tellShown(sheet);
}

export const isFiltered = ({ wish }: SheetState): boolean =>
  wish.filters.length > 0 || wish.onlyFaults;

function tellShown(sheet: SheetState): void {
  sheet.told = sheet.words.rowsShown(sheet.size.rows, sheet.table.rows.length);
}
