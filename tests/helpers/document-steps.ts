import fc from 'fast-check';
import type { Results } from '../../src/engine/index.js';
import { noRules, type PlanDocument } from '../../src/model/index.js';

/** Results with all that verdicts work out when they are read. */
export const plainly = (results: Results): unknown => ({
  ...results,
  fits: results.fits.map(({ package: pack, window, fits, spareMinutes, reasons, placements }) => ({
    package: pack,
    window,
    fits,
    spareMinutes,
    reasons,
    placements,
  })),
});

type Table = 'windows' | 'work' | 'resources';

/** One thing done to a document, bad cells among them. */
export interface Step {
  readonly table: Table;
  readonly kind: 'cell' | 'drop' | 'double' | 'blank' | 'rules';
  readonly row: number;
  readonly column: number;
  readonly text: string;
}

export const steps = fc.array(
  fc.record<Step>({
    table: fc.constantFrom<Table>('windows', 'work', 'resources'),
    kind: fc.constantFrom('cell', 'cell', 'cell', 'drop', 'double', 'blank', 'rules'),
    row: fc.nat(60),
    column: fc.nat(20),
    text: fc.constantFrom('', '45', '2 h', 'A1', 'yes', 'x; y', '2027-02-31 23:00', 'OLE-1'),
  }),
  { minLength: 1, maxLength: 6 },
);

/** The document after a step, sharing with it what the step leaves alone. */
export function stepped(
  document: PlanDocument,
  { table, kind, row, column, text }: Step,
): PlanDocument {
  if (kind === 'rules')
    return { ...document, rules: document.rules === noRules ? { ...noRules } : noRules };
  const held = document.tables[table];
  const at = held.rows.length === 0 ? 0 : row % held.rows.length;
  const rows = held.rows.slice();
  const cells = rows[at];
  if (!cells) return document;
  if (kind === 'drop') rows.splice(at, 1);
  else if (kind === 'double') rows.splice(at, 0, cells.slice());
  else if (kind === 'blank') rows.splice(at, 0, []);
  else rows[at] = cells.length === 0 ? [text] : cells.with(column % cells.length, text);
  return { ...document, tables: { ...document.tables, [table]: { ...held, rows } } };
}
