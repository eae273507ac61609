import { applyEdit, type Edit } from '../../src/edits/index.js';
import type { PlanDocument } from '../../src/model/index.js';
import { MINUTE } from '../../src/calendar/index.js';
import type { Results } from '../../src/engine/index.js';
import { columns, type SheetName } from './peer-sheet.js';

/** One cell typed anew: as a person's edit of our document, and as a number of the peer's sheet. */
export interface CellEdit {
  readonly edit: Edit;
  readonly peer: {
    readonly sheet: SheetName;
    readonly row: number;
    readonly col: number;
    readonly value: number;
  };
}

/** Row after row far from one another, so that neighbours in memory do not help. */
const far = (turn: number, rows: number): number => (turn * 2_654_435_761) % rows;

/** Another end of some window, by 1 to 9 minutes, never the minute it ends at. */
export function windowEdit(document: PlanDocument, { plan }: Results, turn: number): CellEdit {
  const row = far(turn, plan.windows.length);
  const minutes = 1 + (turn % 9);
  const column = document.tables.windows.columns.indexOf('end');
  const before = document.tables.windows.rows[row]!;
  const minute = (Number(before[column]!.slice(-2)) + minutes) % 60;
  const text = before[column]!.slice(0, -2) + String(minute).padStart(2, '0');
  return {
    edit: typed('windows', row, before, before.with(column, text)),
    peer: {
      sheet: 'windows',
      row,
      col: columns.end,
      value: plan.windows[row]!.end / MINUTE + minute - Number(before[column]!.slice(-2)),
    },
  };
}

/** Another length of some whole piece of work. */
export function workEdit(document: PlanDocument, { plan }: Results, turn: number): CellEdit {
  let row = far(turn, plan.activities.length);
  while (plan.activities[row]!.work.kind !== 'whole') row = (row + 1) % plan.activities.length;
  const column = document.tables.work.columns.indexOf('minutes');
  const before = document.tables.work.rows[row]!;
  // The three-point spread of the row goes on holding what it holds: up to 45 minutes over the first length.
  const value = Number(before[column]!) + (turn % 2 === 0 ? 1 : -1);
  return {
    edit: typed('work', row, before, before.with(column, String(value))),
    peer: { sheet: 'work', row, col: columns.minutes, value },
  };
}

function typed(
  table: 'windows' | 'work',
  at: number,
  before: readonly string[],
  after: readonly string[],
): Edit {
  return {
    label: 'Another minute',
    changes: [{ table, splices: [{ at, removed: [before], added: [after] }] }],
  };
}

/** The document with the margin of its rules at so many minutes: every window and every verdict is touched. */
export function withMargin(document: PlanDocument, minutes: number): PlanDocument {
  const part = ['rules', 'margin'];
  return applyEdit(document, {
    label: 'Another margin',
    changes: [{ part, before: document.rules.margin, after: { minutes } }],
  });
}
