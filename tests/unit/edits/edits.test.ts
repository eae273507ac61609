import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  applyEdit,
  editBetween,
  invertEdit,
  isRowsChange,
  rebaseEdit,
} from '../../../src/edits/index.js';
import { copied, deed, document, rowsOf, withRows } from './documents.js';

describe('an edit between two documents', () => {
  it('makes the later one of the earlier, and back, whatever was done', () => {
    fc.assert(
      fc.property(document, fc.array(deed, { maxLength: 4 }), (before, deeds) => {
        const after = deeds.reduce((made, one) => one(made), before);
        const edit = editBetween(before, after, 'x');
        expect(applyEdit(before, edit)).toEqual(after);
        expect(applyEdit(after, invertEdit(edit))).toEqual(before);
      }),
      { numRuns: 500 },
    );
  });

  it('does so between documents that share nothing, and after a trip through JSON', () => {
    fc.assert(
      fc.property(document, fc.array(deed, { maxLength: 4 }), (before, deeds) => {
        const after = copied(deeds.reduce((made, one) => one(made), before));
        const edit = JSON.parse(JSON.stringify(editBetween(before, after, 'x')));
        expect(applyEdit(before, edit)).toEqual(after);
        expect(applyEdit(after, invertEdit(edit))).toEqual(before);
      }),
      { numRuns: 300 },
    );
  });

  it('is empty for the same document and for an equal copy', () => {
    const before = withRows('a b', 'c');
    expect(editBetween(before, before, 'x').changes).toEqual([]);
    expect(editBetween(before, copied(before), 'x').changes).toEqual([]);
  });

  it('holds only the rows that changed', () => {
    const before = withRows('a', 'b', 'c', 'd', 'e');
    const rows = [...before.tables.windows.rows];
    rows[1] = ['B', 'x', 'y'];
    rows.splice(3, 1);
    const after = {
      ...before,
      tables: { ...before.tables, windows: { ...before.tables.windows, rows } },
    };
    expect(editBetween(before, after, 'x').changes).toEqual([
      {
        table: 'windows',
        splices: [
          { at: 1, removed: [['b']], added: [['B', 'x', 'y']] },
          { at: 3, removed: [['d']], added: [] },
        ],
      },
    ]);
  });

  it('moves one row as one row out and one in', () => {
    const before = withRows('a', 'b', 'c', 'd', 'e');
    const [first, ...rest] = before.tables.windows.rows;
    const after = {
      ...before,
      tables: {
        ...before.tables,
        windows: { ...before.tables.windows, rows: [...rest, first!] },
      },
    };
    const [change] = editBetween(before, after, 'x').changes;
    expect(isRowsChange(change!) && change.splices).toEqual([
      { at: 0, removed: [['a']], added: [] },
      { at: 5, removed: [], added: [['a']] },
    ]);
  });

  it('leaves what it does not touch shared with the document it is put on', () => {
    const before = withRows('a', 'b');
    const edit = editBetween(before, { ...before, name: 'Cutting' }, 'x');
    const after = applyEdit(before, edit);
    expect(after.tables).toBe(before.tables);
    expect(after.rules).toBe(before.rules);
  });

  it('refuses a document that holds other rows than it was made for', () => {
    const before = withRows('a', 'b');
    const edit = editBetween(before, withRows('a', 'B'), 'Retype');
    expect(() => applyEdit(withRows('a', 'c'), edit)).toThrow(
      /"Retype" does not fit: tables\.windows/,
    );
    expect(() => applyEdit(withRows('a'), edit)).toThrow(RangeError);
  });

  it('keeps a name such as __proto__ an ordinary entry', () => {
    const before = withRows('a');
    const edit = {
      label: 'x',
      changes: [{ part: ['__proto__'], after: { polluted: true } }],
    };
    applyEdit(before, edit);
    expect(({} as { polluted?: boolean }).polluted).toBeUndefined();
  });
});

describe('two edits of one document', () => {
  it('come to the same document in either order, or both are refused', () => {
    let met = 0;
    fc.assert(
      fc.property(document, deed, deed, (base, one, two) => {
        const a = editBetween(base, one(base), 'a');
        const b = editBetween(base, two(base), 'b');
        const later = rebaseEdit(b, a);
        const earlier = rebaseEdit(a, b, 'before');
        expect(later === undefined).toBe(earlier === undefined);
        if (later === undefined || earlier === undefined) return;
        met += 1;
        expect(applyEdit(applyEdit(base, a), later)).toEqual(
          applyEdit(applyEdit(base, b), earlier),
        );
      }),
      { numRuns: 2000 },
    );
    expect(met).toBeGreaterThan(500);
  });

  it.each([
    ['a row put in above a retyped one', ['a', 'n', 'b', 'c'], ['a', 'b', 'C'], 'a n b C'],
    ['rows put in at the same place', ['a', 'n', 'b', 'c'], ['a', 'm', 'b', 'c'], 'a n m b c'],
    ['the same row taken out twice', ['a', 'c'], ['a', 'c'], 'a c'],
    ['different rows taken out', ['b', 'c'], ['a', 'b'], 'b'],
  ])('are merged: %s', (_title, first, second, merged) => {
    const base = withRows('a', 'b', 'c');
    const a = editBetween(base, withRows(...first), 'a');
    const b = rebaseEdit(editBetween(base, withRows(...second), 'b'), a);
    expect(rowsOf(applyEdit(applyEdit(base, a), b!)).join(' ')).toBe(merged);
  });

  it.each([
    ['retyped differently', ['a', 'B', 'c'], ['a', 'x', 'c']],
    ['retyped and taken out', ['a', 'B', 'c'], ['a', 'c']],
  ])('are refused: the same row %s', (_title, first, second) => {
    const base = withRows('a', 'b', 'c');
    const a = editBetween(base, withRows(...first), 'a');
    expect(rebaseEdit(editBetween(base, withRows(...second), 'b'), a)).toBeUndefined();
  });

  it('are refused where columns move under rows, and merged where a column is added at the end', () => {
    const base = withRows('a', 'b');
    const headed = (...columns: string[]) => ({
      ...base,
      tables: { ...base.tables, windows: { ...base.tables.windows, columns } },
    });
    const row = editBetween(base, withRows('a', 'b', 'c'), 'row');
    const turned = editBetween(base, headed('start', 'window'), 'turn');
    const wider = editBetween(base, headed('window', 'start', 'end'), 'widen');
    expect(rebaseEdit(row, turned)).toBeUndefined();
    expect(rebaseEdit(turned, row)).toBeUndefined();
    expect(rebaseEdit(row, wider)?.changes).toHaveLength(1);
    expect(rebaseEdit(wider, row)?.changes).toHaveLength(1);
  });
});
