import type { ReactiveController, ReactiveControllerHost } from 'lit';
import { worst } from './row-pool.js';
import type { SheetState } from './sheet-state.js';

/** Rows put on paper at most, some 50 pages: a browser lays out all of them before it shows the first. */
export const PRINTED_ROWS = 2_000;

type PrintHost = ReactiveControllerHost & HTMLElement & { readonly renderRoot: ParentNode };

/**
 * Puts a plain table in place of the sheet while the browser prints, as only the rows in sight are drawn. It holds the
 * rows and columns shown, in the order shown, and says how many of the table are not on it.
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
    // First of all, so that a style can hide what follows it.
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
  note.textContent = notes.filter((one) => one !== '').join(' ');
  const paper = document.createElement('table');
  paper.createCaption().textContent = table.file;
  const heads = paper.createTHead().insertRow();
  heads.append(headCell('col', words.printedLine));
  for (const column of columns.shown) heads.append(headCell('col', table.columns[column] ?? ''));
  const body = paper.createTBody();
  for (let place = 0; place < count; place += 1) printRow(sheet, place, body.insertRow());
  printed.append(note, paper);
  return printed;
}

function printRow(sheet: SheetState, place: number, row: HTMLTableRowElement): void {
  const { columns, words, lines } = sheet;
  row.append(headCell('row', String(lines.of(sheet.fileRow(place)))));
  for (const [at, column] of columns.shown.entries()) {
    const cell = row.insertCell();
    const faults = sheet.faultsAt(place, at);
    const text = sheet.cell(place, at);
    cell.textContent = faults ? `${text} [${words[worst(faults)]}]` : text;
    if (columns.figures[column] === true) cell.className = 'figures';
  }
}

function headCell(scope: 'col' | 'row', text: string): HTMLElement {
  const head = document.createElement('th');
  head.scope = scope;
  head.textContent = text;
  return head;
}
