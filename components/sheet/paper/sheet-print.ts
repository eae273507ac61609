import type { ReactiveController, ReactiveControllerHost } from 'lit';
import { columnGroups, roomFor } from './print-columns.js';
import { worst } from '../grid/row-pool.js';
import type { SheetState } from '../sheet-state.js';

/** Most rows printed, about 50 pages: a browser lays out all of them before it shows the first. */
export const PRINTED_ROWS = 2_000;

/** Rows measured for the width of a column. */
const MEASURED_ROWS = 200;

type PrintHost = ReactiveControllerHost & HTMLElement & { readonly renderRoot: ParentNode };

/**
 * Replaces the sheet by a plain table while the browser prints, as the grid draws only visible rows. The table has the
 * shown rows and columns in order, and says how many rows are left out.
 */
export class SheetPrint implements ReactiveController {
  readonly #host: PrintHost;
  readonly #state: SheetState;
  #printed: HTMLElement | undefined;

  constructor(host: PrintHost, state: SheetState) {
    this.#host = host;
    this.#state = state;
    host.addController(this);
  }

  hostConnected(): void {
    addEventListener('beforeprint', this.#before);
    addEventListener('afterprint', this.#after);
  }

  hostDisconnected(): void {
    removeEventListener('beforeprint', this.#before);
    removeEventListener('afterprint', this.#after);
    this.#after();
  }

  readonly #before = (): void => {
    this.#after();
    if (this.#state.size.columns === 0) return;
    this.#printed = printedSheet(this.#state);
    // First child, so that a style can hide what follows.
    this.#host.renderRoot.prepend(this.#printed);
  };

  readonly #after = (): void => {
    this.#printed?.remove();
    this.#printed = undefined;
  };
}

function printedSheet(sheet: SheetState): HTMLElement {
  const { table, words, columns, size } = sheet;
  const count = Math.min(size.rows, PRINTED_ROWS);
  const printed = document.createElement('div');
  printed.className = 'printed';
  const notes = [
    words.printedRows(count, table.rows.length),
    size.rows > count ? words.printedLeftOut(size.rows - count) : '',
    size.rows < table.rows.length ? words.printedFiltered(table.rows.length - size.rows) : '',
    columns.hiddenCount > 0 ? words.printedHidden(columns.hiddenCount) : '',
  ];
  const note = document.createElement('p');
  note.textContent = notes.filter((text) => text !== '').join(' ');
  printed.append(note, ...papers(sheet, count));
  return printed;
}

/** The printed table: split into parts when too wide, each repeating the first column. */
function papers(sheet: SheetState, count: number): HTMLTableElement[] {
  const { table, words, columns } = sheet;
  const titles = columns.shown.map((column) => sheet.headingAt(column));
  const rooms = titles.map((title, at) =>
    roomFor([
      title,
      ...Array.from({ length: Math.min(count, MEASURED_ROWS) }, (_, row) => sheet.cell(row, at)),
    ]),
  );
  const groups = columnGroups(rooms, roomFor([words.printedLine]));
  return groups.map((group) => {
    const paper = document.createElement('table');
    const part = words.printedColumns(titles[group.at(1) ?? 0]!, titles[group.at(-1)!]!);
    paper.createCaption().textContent = groups.length > 1 ? `${table.file}, ${part}` : table.file;
    const heads = paper.createTHead().insertRow();
    heads.append(
      headCell('col', words.printedLine),
      ...group.map((at) => headCell('col', titles[at]!)),
    );
    const body = paper.createTBody();
    for (let place = 0; place < count; place += 1) printRow(sheet, place, group, body.insertRow());
    return paper;
  });
}

function printRow(
  sheet: SheetState,
  place: number,
  group: readonly number[],
  row: HTMLTableRowElement,
): void {
  const { columns, words, lines } = sheet;
  row.append(headCell('row', String(lines.of(sheet.fileRow(place)))));
  for (const at of group) {
    const cell = row.insertCell();
    const faults = sheet.faultsAt(place, at);
    const text = sheet.cell(place, at);
    cell.textContent = faults ? `${text} [${words[worst(faults)]}]` : text;
    if (columns.figures[columns.shown[at]!] === true) cell.className = 'figures';
  }
}

function headCell(scope: 'col' | 'row', text: string): HTMLElement {
  const head = document.createElement('th');
  head.scope = scope;
  head.textContent = text;
  return head;
}
