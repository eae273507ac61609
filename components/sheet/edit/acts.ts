import * as cellActs from './cell-acts.js';
import * as rowActs from './row-acts.js';
import type { SheetState } from '../sheet-state.js';
import type { defaultStrings } from '../strings.js';
import * as viewActs from '../grid/view-acts.js';

export type Act = keyof typeof defaultStrings.acts;

/** Pixels by which columns are made wider or narrower. */
const WIDER = 24;

/** What actions need besides the state: editors, focus and the clipboard. */
export interface ActHost {
  readonly state: SheetState;
  openEditor(): void;
  openHeading(column: number): void;
  openFilter(column: number): void;
  copyCells(cut: boolean): void;
  pasteCells(): void;
  chooseRange(): void;
}

/** Every menu action. */
export const performs: Readonly<Record<Act, (host: ActHost) => void>> = {
  edit: (host) => host.openEditor(),
  cut: (host) => host.copyCells(true),
  copy: (host) => host.copyCells(false),
  paste: (host) => host.pasteCells(),
  clear: ({ state }) => cellActs.clearCells(state),
  fillDown: ({ state }) => cellActs.fillDown(state),
  fillAcross: ({ state }) => cellActs.fillAcross(state),
  series: ({ state }) => cellActs.continueSeries(state),
  days: ({ state }) => cellActs.continueDates(state, 1),
  weeks: ({ state }) => cellActs.continueDates(state, 7),
  range: (host) => host.chooseRange(),
  rowAbove: ({ state }) => rowActs.addRows(state, 'above'),
  rowBelow: ({ state }) => rowActs.addRows(state, 'below'),
  deleteRows: ({ state }) => rowActs.removeRows(state),
  sortUp: ({ state }) => viewActs.sortBy(state, false),
  sortDown: ({ state }) => viewActs.sortBy(state, true),
  unsort: ({ state }) => viewActs.unsort(state),
  filter: (host) => host.openFilter(host.state.fileColumn(host.state.at.column)),
  rename: (host) => host.openHeading(host.state.fileColumn(host.state.at.column)),
  columnBefore: (host) => nameNew(host, 'before'),
  columnAfter: (host) => nameNew(host, 'after'),
  deleteColumns: ({ state }) => rowActs.removeColumns(state),
  hide: ({ state }) => rowActs.hideColumns(state),
  showColumns: ({ state }) => rowActs.showColumns(state),
  wider: ({ state }) => rowActs.widenColumns(state, WIDER),
  narrower: ({ state }) => rowActs.widenColumns(state, -WIDER),
  fit: ({ state }) => rowActs.fitColumns(state),
};

function nameNew(host: ActHost, where: 'before' | 'after'): void {
  const column = rowActs.addColumn(host.state, where);
  host.openHeading(host.state.fileColumn(column));
}

/** Actions that change the table; not offered in a read-only sheet. */
const edits: ReadonlySet<Act> = new Set<Act>([
  'edit',
  'cut',
  'paste',
  'clear',
  'fillDown',
  'fillAcross',
  'series',
  'days',
  'weeks',
  'rowAbove',
  'rowBelow',
  'deleteRows',
  'rename',
  'columnBefore',
  'columnAfter',
  'deleteColumns',
]);

/** Actions on whole rows, which are allowed in calculated columns too. */
const rowEdits: ReadonlySet<Act> = new Set<Act>(['rowAbove', 'rowBelow', 'deleteRows']);

export interface ActGroup {
  readonly title: string;
  readonly acts: readonly Act[];
}

/** The actions to offer now. `column`: only column actions. */
export function offered(state: SheetState, readonly: boolean, column: boolean): ActGroup[] {
  const { words, wish, columns, size } = state;
  const result = state.resultOf(state.fileColumn(state.at.column)) !== undefined;
  const possible = (act: Act): boolean =>
    !(readonly && edits.has(act)) &&
    !(result && edits.has(act) && !rowEdits.has(act)) &&
    !(act === 'unsort' && !wish.sort) &&
    !(act === 'showColumns' && columns.hiddenCount === 0) &&
    !(size.rows === 0 && act === 'edit');
  const cells: Act[] = ['edit', 'cut', 'copy', 'paste', 'clear', 'fillDown', 'fillAcross'];
  const more: Act[] = ['series', 'days', 'weeks', 'range'];
  const rows: Act[] = ['rowAbove', 'rowBelow', 'deleteRows'];
  const views: Act[] = ['sortUp', 'sortDown', 'unsort', 'filter'];
  const shape: Act[] = ['rename', 'columnBefore', 'columnAfter', 'deleteColumns'];
  const widths: Act[] = ['wider', 'narrower', 'fit', 'hide', 'showColumns'];
  const heading = state.headingAt(state.fileColumn(state.at.column));
  const groups: ActGroup[] = [
    ...(column
      ? []
      : [
          { title: words.cellGroup, acts: [...cells, ...more] },
          { title: words.rowGroup, acts: rows },
        ]),
    { title: words.columnGroup(heading), acts: [...views, ...widths, ...shape] },
  ];
  return groups
    .map((group) => ({ ...group, acts: group.acts.filter(possible) }))
    .filter((item) => item.acts.length > 0);
}
