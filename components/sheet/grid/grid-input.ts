import { turnedKey } from '../../shared/grid-keys.js';
import { fillAcross, fillDown, clearCells, selectedCells } from '../edit/cell-acts.js';
import { cellsIn, needsField, putCells } from '../edit/clipboard-port.js';
import { gridKey, isTyped, keyTable, type KeyId, type KeyRule } from './key-table.js';
import { everything, movedBy, onlyCell, wholeColumns, wholeRows } from './selection.js';
import type { SheetControl } from '../sheet-control.js';

/** Handles a key on the grid. Other keys are left to the browser. */
export function onGridKey(control: SheetControl, event: KeyboardEvent): void {
  if (event.target !== event.currentTarget || event.isComposing) return;
  const id = gridKey(event);
  if (id !== undefined) {
    const rule: KeyRule = keyTable[id];
    if (rule.edits && control.readonly) return;
    if (handleKey(control, id, event)) event.preventDefault();
  } else if (isTyped(event) && !control.readonly)
    // The character itself goes into the editor, which now has the focus.
    control.openEditor('');
}

/** Returns whether to prevent the browser's default. */
function handleKey(control: SheetControl, id: KeyId, event: KeyboardEvent): boolean {
  const { state } = control;
  const { selection, size } = state;
  switch (id) {
    case 'step':
    case 'edge':
    case 'rowEnds':
    case 'tableEnds':
    case 'page':
    case 'extend':
    case 'extendFar': {
      const within = { ...size, page: control.view?.page ?? 10 };
      const to = movedBy(
        turnedKey(event, event.currentTarget as Element),
        selection,
        within,
        event.shiftKey,
      );
      if (to) control.select(to);
      return true;
    }
    case 'all':
      control.select(everything(size), false);
      return true;
    case 'column':
      control.select(wholeColumns(selection, size), false);
      return true;
    case 'row':
      control.select(wholeRows(selection, size), false);
      return true;
    case 'single':
      control.ranging = false;
      control.select(onlyCell(state.at));
      return false;
    case 'edit':
      control.openEditor();
      return true;
    case 'clear':
      control.updateState(clearCells);
      return true;
    case 'fillDown':
      control.updateState(fillDown);
      return true;
    case 'fillAcross':
      control.updateState(fillAcross);
      return true;
    case 'undo':
      control.undo();
      return true;
    case 'redo':
      control.redo();
      return true;
    case 'find':
      control.openFind();
      return true;
    case 'help':
      control.openHelp();
      return true;
    case 'menu':
      openMenuAtCell(control);
      return true;
    case 'copy':
    case 'cut':
    case 'paste':
      if (needsField()) focusTemporaryField(control, event.currentTarget as HTMLElement);
      return false;
    default:
      return false;
  }
}

export function openMenuAtCell(control: SheetControl): void {
  const { row, column } = control.state.at;
  const cell = control.view?.pool.cell(row, column) ?? control.view?.scroller;
  const box = cell?.getBoundingClientRect();
  control.openMenu({ x: box?.left ?? 0, y: box?.bottom ?? 0, column: false });
}

export function onCopy(control: SheetControl, event: ClipboardEvent): void {
  const cut = event.type === 'cut';
  if (cut && control.readonly) return;
  const cells = selectedCells(control.state);
  if (cells.length === 0) return;
  putCells(event, cells);
  control.copied(cells, cut);
}

export function onPaste(control: SheetControl, event: ClipboardEvent): void {
  if (control.readonly) return;
  event.preventDefault();
  control.pasted(cellsIn(event));
}

/** Focuses a temporary field until the key press is over; its events bubble to the grid. */
function focusTemporaryField(control: SheetControl, grid: HTMLElement): void {
  const field = document.createElement('textarea');
  field.className = 'unseen';
  field.tabIndex = -1;
  field.setAttribute('aria-hidden', 'true');
  field.value = ' ';
  grid.append(field);
  field.select();
  const back = (): void => {
    field.remove();
    control.focus();
  };
  setTimeout(back, 50);
}
