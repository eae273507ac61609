import type { Fault } from '../../../src/model/index.js';
import type { GridCell } from '../../shared/grid-keys.js';
import { Pool } from '../../shared/pool.js';
import { holds, type Block } from './selection.js';
import type { SheetState } from '../sheet-state.js';

/** The rows and columns to draw; half-open. The first column is always drawn too. */
export interface DrawnPart {
  readonly first: number;
  readonly end: number;
  readonly firstColumn: number;
  readonly endColumn: number;
  readonly rowHeight: number;
  /** Increases with every change except scrolling; a row already drawn at this version is skipped. */
  readonly version: number;
}

interface PoolCell {
  readonly element: HTMLElement;
  readonly text: Text;
  sign: HTMLElement | undefined;
  /** All that was written to the element except its text, to write only differences. */
  look: string;
  /** The same, for what changes only with the column. */
  standing: string;
  column: number;
}

interface PoolRow {
  readonly element: HTMLElement;
  readonly line: Text;
  readonly gutter: HTMLElement;
  readonly cells: PoolCell[];
  place: number;
  look: string;
  drawn: string;
}

/**
 * The visible rows. Elements are created once and reused for other rows, so that scrolling through any number of rows
 * stays within a frame. The row being edited is never reused.
 */
export class RowPool {
  readonly #body: HTMLElement;
  readonly #rows = new Pool(newRow);
  readonly #grip: HTMLElement;

  constructor(body: HTMLElement) {
    this.#body = body;
    this.#grip = document.createElement('span');
    this.#grip.className = 'grip';
    this.#grip.setAttribute('aria-hidden', 'true');
  }

  /** `kept`: the cell being edited. */
  draw(sheet: SheetState, part: DrawnPart, kept: GridCell | undefined, readonly: boolean): void {
    const wanted = (place: number): boolean =>
      (place >= part.first && place < part.end) || place === kept?.row;
    this.#rows.keep(wanted);
    const columns = drawnColumns(sheet, part, kept?.column);
    const drawn = `${part.version} ${part.rowHeight} ${columns.join()}`;
    const last = sheet.size.rows - 1;
    for (let place = part.first; place < part.end; place += 1)
      this.#drawRow(sheet, place, columns, part.rowHeight, kept, drawn);
    if (kept && kept.row <= last && (kept.row < part.first || kept.row >= part.end))
      this.#drawRow(sheet, kept.row, columns, part.rowHeight, kept, drawn);
    this.#rows.shed();
    this.#placeGrip(sheet, readonly);
  }

  /** The element of a cell, if drawn. */
  cell(row: number, column: number): HTMLElement | undefined {
    return this.#rows.at(row)?.cells.find((cell) => cell.column === column)?.element;
  }

  /** Restores the reading order of rows, which reuse mixes up, for those who read without the grid's keys. */
  settle(): void {
    this.#rows.settle(this.#body);
  }

  #drawRow(
    sheet: SheetState,
    place: number,
    columns: readonly number[],
    rowHeight: number,
    kept: GridCell | undefined,
    drawn: string,
  ): void {
    const row = this.#rows.take(place);
    if (row.element.parentNode !== this.#body) this.#body.append(row.element);
    if (row.place === place && row.drawn === drawn) return;
    row.drawn = drawn;
    const fileRow = sheet.fileRow(place);
    const chosen = place === sheet.at.row;
    const open = place === kept?.row;
    const look = `${place} ${fileRow} ${rowHeight} ${chosen} ${open}`;
    if (look !== row.look) {
      row.look = look;
      row.place = place;
      row.element.className = `row${chosen ? ' chosen' : ''}${open ? ' opened' : ''}`;
      row.element.setAttribute('aria-rowindex', String(place + 2));
      row.element.style.setProperty('transform', `translateY(${place * rowHeight}px)`);
      row.gutter.dataset['line'] = String(place);
    }
    const line = String(sheet.lines.of(fileRow));
    if (row.line.data !== line) row.line.data = line;
    while (row.cells.length < columns.length) {
      const cell = newCell();
      row.cells.push(cell);
      row.element.append(cell.element);
    }
    if (place === kept?.row) stayInPlace(row.cells, kept.column, columns);
    for (const cell of row.cells.splice(columns.length)) cell.element.remove();
    const { block } = sheet;
    for (const [index, column] of columns.entries())
      drawCell(sheet, row.cells[index]!, place, column, block, kept);
  }

  #placeGrip(sheet: SheetState, readonly: boolean): void {
    const { bottom, end } = sheet.block;
    const corner = readonly ? undefined : this.cell(bottom, end);
    if (!corner) this.#grip.remove();
    else if (this.#grip.parentNode !== corner) corner.append(this.#grip);
  }
}

function drawnColumns(sheet: SheetState, part: DrawnPart, kept: number | undefined): number[] {
  const { columns: count } = sheet.size;
  const columns = count > 0 ? [0] : [];
  if (kept !== undefined && kept > 0 && kept < part.firstColumn) columns.push(kept);
  for (
    let column = Math.max(1, part.firstColumn);
    column < Math.min(count, part.endColumn);
    column += 1
  )
    columns.push(column);
  if (kept !== undefined && kept >= part.endColumn && kept < count) columns.push(kept);
  return columns;
}

/** Keeps the element of the cell being edited. */
function stayInPlace(cells: PoolCell[], column: number, columns: readonly number[]): void {
  const to = columns.indexOf(column);
  const from = cells.findIndex((cell) => cell.column === column);
  if (from < 0 || to < 0 || from === to) return;
  [cells[from], cells[to]] = [cells[to]!, cells[from]!];
}

function newRow(): PoolRow {
  const element = document.createElement('div');
  element.className = 'row';
  element.setAttribute('role', 'row');
  const gutter = document.createElement('div');
  gutter.className = 'line';
  gutter.setAttribute('aria-hidden', 'true');
  const line = document.createTextNode('');
  gutter.append(line);
  element.append(gutter);
  return { element, gutter, line, cells: [], place: -1, look: '', drawn: '' };
}

function newCell(): PoolCell {
  const element = document.createElement('div');
  element.setAttribute('part', 'cell');
  const text = document.createTextNode('');
  element.append(text);
  return { element, text, sign: undefined, look: '', standing: '', column: -1 };
}

function drawCell(
  sheet: SheetState,
  cell: PoolCell,
  place: number,
  column: number,
  block: Block,
  kept: GridCell | undefined,
): void {
  const fileRow = sheet.fileRow(place);
  const fileColumn = sheet.fileColumn(column);
  const result = sheet.resultOf(fileColumn) && sheet.resultAt(fileRow, fileColumn);
  const value = result?.text ?? sheet.textAt(fileRow, fileColumn);
  if (cell.text.data !== value) cell.text.data = value;
  const faults = sheet.faults.get(fileRow)?.get(fileColumn);
  const bad = faults && worst(faults);
  const inBlock = holds(block, place, column);
  const here = place === sheet.at.row && column === sheet.at.column;
  const edges = inBlock ? edgesOf(block, place, column) : '';
  const other = sheet.others.get(fileRow)?.get(fileColumn) ?? '';
  const classes = [
    column === 0 ? 'first' : '',
    sheet.columns.figures[fileColumn] === true ? 'figures' : '',
    bad === undefined ? '' : `fault ${bad}`,
    result ? `result ${result.tone ?? ''}` : '',
    other === '' ? '' : 'other',
    here ? 'at' : '',
    place === kept?.row && column === kept.column ? 'open' : '',
  ];
  const look = `${fileRow} ${fileColumn} ${place} ${column} ${classes.join('.')} ${inBlock} ${edges} ${other} ${sheet.words.error}`;
  if (look === cell.look) return;
  cell.look = look;
  cell.column = column;
  const { element } = cell;
  const name = classes.filter((text) => text !== '').join(' ');
  if (element.className !== name) element.className = name;
  element.id = `cell-${fileRow}-${fileColumn}`;
  element.dataset['row'] = String(place);
  element.removeAttribute('title');
  // Calculated texts come from the engine, in English.
  if (result) element.lang = 'en';
  else element.removeAttribute('lang');
  const standing = `${fileColumn} ${column} ${inBlock} ${edges}`;
  if (standing !== cell.standing) {
    cell.standing = standing;
    element.setAttribute('role', column === 0 ? 'rowheader' : 'gridcell');
    element.setAttribute('aria-colindex', String(sheet.columns.order.indexOf(fileColumn) + 1));
    setOrDrop(element, 'aria-readonly', result ? 'true' : '');
    element.setAttribute('aria-selected', String(inBlock));
    element.dataset['column'] = String(column);
    element.style.setProperty('grid-column', String(column + 2));
    setOrDrop(element, 'data-edge', edges);
  }
  setOrDrop(element, 'data-other', other);
  setOrDrop(element, 'aria-invalid', bad === undefined ? '' : 'true');
  setOrDrop(element, 'aria-describedby', here && bad !== undefined ? 'said' : '');
  sign(cell, bad === undefined ? '' : bad, sheet);
}

function setOrDrop(element: Element, name: string, value: string): void {
  if (value === '') element.removeAttribute(name);
  else element.setAttribute(name, value);
}

export function worst(faults: readonly Fault[]): 'error' | 'warning' {
  return faults.some((fault) => fault.severity === 'error') ? 'error' : 'warning';
}

function edgesOf(block: Block, row: number, column: number): string {
  return [
    row === block.top ? 'top' : '',
    row === block.bottom ? 'bottom' : '',
    column === block.start ? 'start' : '',
    column === block.end ? 'end' : '',
  ]
    .filter((text) => text !== '')
    .join(' ');
}

/** A visible mark and a text for screen readers; colour is not enough. */
function sign(cell: PoolCell, severity: '' | 'error' | 'warning', sheet: SheetState): void {
  if (severity === '') {
    cell.sign?.remove();
    cell.sign = undefined;
    return;
  }
  if (!cell.sign) {
    const mark = document.createElement('span');
    mark.className = 'sign';
    mark.setAttribute('aria-hidden', 'true');
    const word = document.createElement('span');
    word.className = 'unseen';
    cell.sign = document.createElement('span');
    cell.sign.append(mark, word);
    cell.element.prepend(cell.sign);
  }
  const [mark, word] = cell.sign.children;
  mark!.textContent = severity === 'error' ? '✕ ' : '! ';
  word!.textContent = `${sheet.words[severity]}: `;
}
