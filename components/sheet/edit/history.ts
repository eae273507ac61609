import { rowsBetween, type Splice } from '../../../src/edits/index.js';
import type { TableText } from '../../../src/model/index.js';
import type { Selection } from '../grid/selection.js';

type Frame = Omit<TableText, 'rows'>;

interface Step {
  readonly label: string;
  readonly before: Frame;
  readonly after: Frame;
  readonly splices: readonly Splice[];
  readonly selected: Selection;
}

/** Result of an undo or redo. */
export interface HistoryResult {
  readonly table: TableText;
  readonly label: string;
  readonly selected: Selection;
}

const frameOf = ({ rows: _, ...frame }: TableText): Frame => frame;

/** Undo history of a table. It stores changed rows, not copies of the table. */
export class SheetHistory {
  #done: Step[] = [];
  #undone: Step[] = [];
  readonly #limit: number;

  /** `limit`: most steps kept; older ones are dropped. */
  constructor(limit = 500) {
    this.#limit = limit;
  }

  get undoLabel(): string | undefined {
    return this.#done.at(-1)?.label;
  }

  get redoLabel(): string | undefined {
    return this.#undone.at(-1)?.label;
  }

  /** Records a change with the selection before it. Undone steps are dropped. */
  push(before: TableText, after: TableText, label: string, selected: Selection): void {
    this.#undone = [];
    this.#done.push({
      label,
      before: frameOf(before),
      after: frameOf(after),
      splices: rowsBetween(before.rows, after.rows),
      selected,
    });
    if (this.#done.length > this.#limit) this.#done.shift();
  }

  /** The table without the last step; `undefined` when there is none. */
  undo(table: TableText): HistoryResult | undefined {
    const step = this.#done.pop();
    if (!step) return undefined;
    this.#undone.push(step);
    const rows = splicedRows(table.rows, invertedSplices(step.splices));
    return { table: { ...step.before, rows }, label: step.label, selected: step.selected };
  }

  redo(table: TableText): HistoryResult | undefined {
    const step = this.#undone.pop();
    if (!step) return undefined;
    this.#done.push(step);
    const rows = splicedRows(table.rows, step.splices);
    return { table: { ...step.after, rows }, label: step.label, selected: step.selected };
  }

  clear(): void {
    this.#done = [];
    this.#undone = [];
  }
}

function invertedSplices(splices: readonly Splice[]): Splice[] {
  let shift = 0;
  return splices.map(({ at, removed, added }) => {
    const turned = { at: at + shift, removed: added, added: removed };
    shift += added.length - removed.length;
    return turned;
  });
}

function splicedRows(rows: readonly string[][], splices: readonly Splice[]): string[][] {
  const made: string[][] = [];
  let from = 0;
  for (const { at, removed, added } of splices) {
    for (let index = from; index < at; index += 1) made.push(rows[index]!);
    for (const row of added) made.push(row as string[]);
    from = at + removed.length;
  }
  for (let index = from; index < rows.length; index += 1) made.push(rows[index]!);
  return made;
}
