import type { GridCell } from '../../shared/grid-keys.js';
import { repeatOver } from '../edit/cell-acts.js';
import { fitColumns } from '../edit/row-acts.js';
import {
  blockOf,
  onlyCell,
  wholeColumns,
  wholeRows,
  type Block,
  type Selection,
} from './selection.js';
import type { SheetControl } from '../sheet-control.js';

type Drag =
  | { readonly kind: 'cells' | 'rows' | 'columns'; readonly anchor: GridCell }
  | { readonly kind: 'fill'; readonly from: Block }
  | { readonly kind: 'width'; readonly column: number; readonly x: number; readonly width: number };

/** Handles mouse, pen and touch. Touch only scrolls and taps, except on the grip, which it can drag. */
export class PointerActs {
  readonly #control: SheetControl;
  #drag: Drag | undefined;
  /** The focused cell before the current tap. */
  #before: GridCell | undefined;

  constructor(control: SheetControl) {
    this.#control = control;
  }

  readonly down = (event: PointerEvent): void => {
    const target = event.target as Element;
    const { state } = this.#control;
    this.#before = state.at;
    if (event.button !== 0) return;
    const sizer = target.closest<HTMLElement>('.sizer');
    if (sizer) {
      const column = Number(sizer.dataset['size']);
      this.#begin(event, {
        kind: 'width',
        column,
        x: event.clientX,
        width: state.columns.widths[column]!,
      });
      event.preventDefault();
    } else if (target.closest('.grip')) {
      this.#begin(event, { kind: 'fill', from: state.block });
      event.preventDefault();
    } else if (event.pointerType === 'mouse' && !target.closest('button, input')) {
      const drag = this.#choose(target, event.shiftKey);
      if (drag) this.#begin(event, drag);
    }
  };

  readonly move = (event: PointerEvent): void => {
    const drag = this.#drag;
    if (!drag) return;
    const { state } = this.#control;
    if (drag.kind === 'width') {
      const rtl = getComputedStyle(event.currentTarget as Element).direction === 'rtl' ? -1 : 1;
      state.columns.resize(drag.column, drag.width + rtl * (event.clientX - drag.x));
      this.#control.refresh();
      return;
    }
    const at = this.#cellAt(event);
    if (!at) return;
    if (drag.kind === 'fill') this.#control.select(blockSelection(reached(drag.from, at)));
    else {
      const to: Selection = { anchor: drag.anchor, at };
      if (drag.kind === 'rows') this.#control.select(wholeRows(to, state.size));
      else if (drag.kind === 'columns') this.#control.select(wholeColumns(to, state.size), false);
      else this.#control.select(to);
    }
  };

  readonly up = (event: PointerEvent): void => {
    const drag = this.#drag;
    this.#drag = undefined;
    if (drag?.kind !== 'fill' || event.type === 'pointercancel') return;
    const over = blockOf(this.#control.state.selection);
    this.#control.updateState((state) => {
      state.selection = blockSelection(over);
      repeatOver(state, drag.from, over);
    });
  };

  /** A tap, or the end of a mouse press, which has already selected its cell. */
  readonly click = (event: MouseEvent): void => {
    const target = event.target as Element;
    if (target.closest('.grip, .sizer, button, input')) return;
    const control = this.#control;
    const type = (event as Partial<PointerEvent>).pointerType ?? '';
    if (type === 'mouse') {
      if (this.#before && target.closest('[data-row]')) control.sendPosition();
      return;
    }
    const before = this.#before ?? control.state.at;
    this.#before = undefined;
    const cell = cellOf(target);
    if (cell && control.ranging) {
      control.ranging = false;
      control.select({ anchor: control.state.selection.anchor, at: cell });
      return;
    }
    this.#choose(target, event.shiftKey);
    if (!cell) return;
    if (type === 'touch' && before.row === cell.row && before.column === cell.column)
      control.openEditor();
    else control.sendPosition();
  };

  readonly doubleClick = (event: MouseEvent): void => {
    const target = event.target as Element;
    if (target.closest('.sizer')) this.#control.updateState(fitColumns);
    else if (cellOf(target)) this.#control.openEditor();
    else {
      const head = target.closest<HTMLElement>('[data-head]');
      if (head && !target.closest('button'))
        this.#control.openHeading(this.#control.state.fileColumn(Number(head.dataset['head'])));
    }
  };

  readonly menu = (event: MouseEvent): void => {
    const target = event.target as Element;
    const head = target.closest<HTMLElement>('[data-head]');
    const cell = cellOf(target);
    if (!head && !cell && !target.closest('.line')) return;
    event.preventDefault();
    const { state } = this.#control;
    const { top, bottom, start, end } = state.block;
    const column = head ? Number(head.dataset['head']) : cell?.column;
    // A press inside the block keeps it, as the menu is for the whole block.
    const inside =
      cell && cell.row >= top && cell.row <= bottom && cell.column >= start && cell.column <= end;
    const headInside = column !== undefined && head && column >= start && column <= end;
    if (!inside && !headInside) this.#choose(target, false);
    this.#control.openMenu({ x: event.clientX, y: event.clientY, column: head !== null });
  };

  #begin(event: PointerEvent, drag: Drag): void {
    this.#drag = drag;
    (event.currentTarget as Element).setPointerCapture(event.pointerId);
  }

  /** Selects the pressed cell, row or column. Returns the drag that may follow. */
  #choose(target: Element, extend: boolean): Drag | undefined {
    const control = this.#control;
    const { state } = control;
    const { anchor } = state.selection;
    const cell = cellOf(target);
    if (cell) {
      control.select(extend ? { anchor, at: cell } : onlyCell(cell));
      return { kind: 'cells', anchor: state.selection.anchor };
    }
    const line = target.closest<HTMLElement>('.line[data-line]');
    if (line) {
      const at = { row: Number(line.dataset['line']), column: 0 };
      control.select(wholeRows({ anchor: extend ? anchor : at, at }, state.size));
      return { kind: 'rows', anchor: state.selection.anchor };
    }
    const head = target.closest<HTMLElement>('[data-head]');
    if (head && state.size.rows > 0) {
      const at = { row: 0, column: Number(head.dataset['head']) };
      control.select(wholeColumns({ anchor: extend ? anchor : at, at }, state.size), false);
      return { kind: 'columns', anchor: state.selection.anchor };
    }
    return undefined;
  }

  /** The cell under the pointer, or the nearest one when it is outside the sheet, so that a drag keeps scrolling. */
  #cellAt(event: PointerEvent): GridCell | undefined {
    const { view, state } = this.#control;
    if (!view) return undefined;
    const box = view.scroller.getBoundingClientRect();
    const x = Math.max(
      box.left + 2,
      Math.min(event.clientX, box.left + view.scroller.clientWidth - 3),
    );
    const y = Math.max(
      box.top + 2,
      Math.min(event.clientY, box.top + view.scroller.clientHeight - 3),
    );
    const root = view.scroller.getRootNode() as ShadowRoot;
    const under = root.elementFromPoint(x, y);
    const cell = under && cellOf(under);
    if (cell) {
      const beyond = event.clientY > box.bottom ? 1 : 0;
      const beside = event.clientX > box.right ? 1 : 0;
      return { row: cell.row + beyond, column: cell.column + beside };
    }
    const head = under?.closest<HTMLElement>('[data-head]');
    if (head) return { row: Math.max(0, state.at.row - 1), column: Number(head.dataset['head']) };
    const line = under?.closest<HTMLElement>('.line[data-line]');
    return line ? { row: Number(line.dataset['line']), column: 0 } : undefined;
  }
}

function cellOf(target: Element): GridCell | undefined {
  const cell = target.closest<HTMLElement>('[data-row]');
  return cell
    ? { row: Number(cell.dataset['row']), column: Number(cell.dataset['column']) }
    : undefined;
}

const blockSelection = ({ top, bottom, start, end }: Block): Selection => ({
  anchor: { row: top, column: start },
  at: { row: bottom, column: end },
});

/** Extends the block towards a cell in one direction only: the one in which the cell is further away. */
function reached(from: Block, { row, column }: GridCell): Block {
  const down = Math.max(from.top - row, row - from.bottom, 0);
  const along = Math.max(from.start - column, column - from.end, 0);
  if (down >= along)
    return { ...from, top: Math.min(from.top, row), bottom: Math.max(from.bottom, row) };
  return { ...from, start: Math.min(from.start, column), end: Math.max(from.end, column) };
}
