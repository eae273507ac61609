import type { TableChange } from '../../../src/plan/index.js';
import { emptyPlan, emptyTable, type PlanDocument } from '../../../src/model/index.js';

/** A plan whose work table holds these rows of one cell each. */
export function planOf(...rows: string[]): PlanDocument {
  const plan = emptyPlan('Marl Vale', 'Europe/London');
  const work = { ...emptyTable('work.csv'), columns: ['activity'], rows: rows.map((row) => [row]) };
  return { ...plan, tables: { ...plan.tables, work } };
}

export const rowsOf = (document: PlanDocument): string[] =>
  document.tables.work.rows.map((row) => row.join('|'));

/** The plan with one more row at a place, or at the end. */
export function withRow(document: PlanDocument, text: string, at = Infinity): PlanDocument {
  const rows = document.tables.work.rows.toSpliced(at, 0, [text]);
  return { ...document, tables: { ...document.tables, work: { ...document.tables.work, rows } } };
}

/** One cell of a row typed anew, as the sheet does it. */
export const typed = (row: number, text: string): TableChange => ({
  table: 'work',
  steps: [{ cells: [{ row, column: 0, text }] }],
});

/** The plan with one row typed anew. */
export function retyped(document: PlanDocument, at: number, text: string): PlanDocument {
  const rows = document.tables.work.rows.map((row, index) => (index === at ? [text] : row));
  return { ...document, tables: { ...document.tables, work: { ...document.tables.work, rows } } };
}
