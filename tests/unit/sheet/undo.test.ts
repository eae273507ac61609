import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import * as cellActs from '../../../components/sheet/edit/cell-acts.js';
import * as rowActs from '../../../components/sheet/edit/row-acts.js';
import { SheetState } from '../../../components/sheet/sheet-state.js';
import { defaultStrings } from '../../../components/sheet/strings.js';
import * as viewActs from '../../../components/sheet/grid/view-acts.js';
import type { TableText } from '../../../src/model/index.js';

const text = fc.constantFrom('', 'a', 'b', '1', '2', '10', '2027-03-01', 'N09');
const tables = fc
  .array(fc.array(text, { maxLength: 5 }), { maxLength: 8 })
  .map((rows): TableText => ({
    file: 'work.csv',
    columns: ['package', 'title', 'minutes'],
    rows,
    map: { package: 'package' },
  }));
const place = fc.record({ row: fc.nat(9), column: fc.nat(4) });
const pasted = fc.array(fc.array(text, { minLength: 2, maxLength: 2 }), {
  minLength: 1,
  maxLength: 4,
});

const acts: fc.Arbitrary<(sheet: SheetState) => unknown> = fc.oneof(
  fc.constantFrom(
    cellActs.clearCells,
    cellActs.fillDown,
    cellActs.fillAcross,
    cellActs.continueSeries,
    rowActs.removeRows,
    rowActs.removeColumns,
    rowActs.hideColumns,
    rowActs.showColumns,
    viewActs.unsort,
    viewActs.unfilter,
  ),
  fc
    .constantFrom('above', 'below')
    .map((where) => (sheet: SheetState) => rowActs.addRows(sheet, where)),
  fc.constant((sheet: SheetState) => rowActs.addColumn(sheet, 'after')),
  fc.constant((sheet: SheetState) => viewActs.sortBy(sheet, true)),
  text.map((wanted) => (sheet: SheetState) => viewActs.filterBy(sheet, 0, wanted)),
  pasted.map((cells) => (sheet: SheetState) => cellActs.pasteCells(sheet, cells)),
  fc.tuple(place, place).map(([anchor, at]) => (sheet: SheetState) => {
    sheet.selection = {
      anchor: inside(sheet, anchor),
      at: inside(sheet, at),
    };
  }),
);

function inside({ size }: SheetState, { row, column }: { row: number; column: number }) {
  return {
    row: Math.min(row, Math.max(0, size.rows - 1)),
    column: Math.min(column, Math.max(0, size.columns - 1)),
  };
}

function stateOf(table: TableText): SheetState {
  const sheet = new SheetState(defaultStrings, () => undefined);
  sheet.take(table);
  return sheet;
}

describe('undo in the sheet', () => {
  it('gives the table back whatever was done, and redo does it again', () => {
    fc.assert(
      fc.property(tables, fc.array(acts, { maxLength: 12 }), (table, steps) => {
        const sheet = stateOf(table);
        const seen = [table];
        for (const step of steps) {
          step(sheet);
          if (sheet.table !== seen.at(-1)) seen.push(sheet.table);
        }
        for (const before of seen.slice(0, -1).reverse()) {
          sheet.undo();
          expect(sheet.table).toEqual(before);
        }
        for (const after of seen.slice(1)) {
          sheet.redo();
          expect(sheet.table).toEqual(after);
        }
      }),
      { numRuns: 400 },
    );
  });

  it('keeps the selection within what is shown and the order free of doubles', () => {
    fc.assert(
      fc.property(tables, fc.array(acts, { maxLength: 12 }), (table, steps) => {
        const sheet = stateOf(table);
        for (const step of steps) {
          step(sheet);
          const { rows, columns } = sheet.size;
          expect(sheet.block.bottom).toBeLessThan(Math.max(1, rows));
          expect(sheet.block.end).toBeLessThan(Math.max(1, columns));
          const order = sheet.order ?? [];
          expect(new Set(order).size).toBe(order.length);
          for (const row of order) expect(sheet.table.rows[row]).toBeDefined();
        }
      }),
      { numRuns: 400 },
    );
  });

  it('shares the rows that an edit leaves alone', () => {
    const sheet = stateOf({ file: 'a.csv', columns: ['a'], rows: [['1'], ['2'], ['3']] });
    const { rows } = sheet.table;
    cellActs.typeCell(sheet, 1, 0, 'x');
    expect(sheet.table.rows[0]).toBe(rows[0]);
    expect(sheet.table.rows[2]).toBe(rows[2]);
    sheet.undo();
    expect(sheet.table.rows[1]).toBe(rows[1]);
  });

  it('copies a block and pastes it elsewhere exactly', () => {
    const sheet = stateOf({
      file: 'a.csv',
      columns: ['a', 'b'],
      rows: [
        ['007', 'x\ty'],
        ['', '"q"'],
        ['', ''],
        ['', ''],
      ],
    });
    sheet.selection = { anchor: { row: 0, column: 0 }, at: { row: 1, column: 1 } };
    const cells = cellActs.selectedCells(sheet);
    sheet.selection = { anchor: { row: 2, column: 0 }, at: { row: 2, column: 0 } };
    cellActs.pasteCells(sheet, cells);
    expect(sheet.table.rows.slice(2)).toEqual(sheet.table.rows.slice(0, 2));
  });

  it('writes an edit of a sorted and filtered view to the right row of the file', () => {
    const sheet = stateOf({
      file: 'a.csv',
      columns: ['id', 'n'],
      rows: [
        ['c', '10'],
        ['a', '9'],
        ['b', ''],
        ['a2', '-1'],
      ],
    });
    viewActs.sortBy(sheet, false, 1);
    expect([0, 1, 2, 3].map((place) => sheet.cell(place, 0))).toEqual(['a2', 'a', 'c', 'b']);
    viewActs.filterBy(sheet, 0, 'A');
    expect(sheet.size.rows).toBe(2);
    sheet.selection = { anchor: { row: 1, column: 1 }, at: { row: 1, column: 1 } };
    cellActs.pasteCells(sheet, [['77']]);
    expect(sheet.table.rows[1]).toEqual(['a', '77']);
    expect(sheet.table.rows.map((row) => row[0])).toEqual(['c', 'a', 'b', 'a2']);
  });
});
