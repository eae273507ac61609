import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { applyEdit, editBetween, isRowsChange } from '../../../src/edits/index.js';
import { copied, deed, document, withRows } from './documents.js';

describe('an edit between two documents', () => {
  it('makes the later one of the earlier, whatever was done', () => {
    fc.assert(
      fc.property(document, fc.array(deed, { maxLength: 4 }), (before, deeds) => {
        const after = deeds.reduce((made, item) => item(made), before);
        const edit = editBetween(before, after, 'x');
        expect(applyEdit(before, edit)).toEqual(after);
      }),
      { numRuns: 500 },
    );
  });

  it('does so between documents that share nothing, and after a trip through JSON', () => {
    fc.assert(
      fc.property(document, fc.array(deed, { maxLength: 4 }), (before, deeds) => {
        const after = copied(deeds.reduce((made, item) => item(made), before));
        const edit = JSON.parse(JSON.stringify(editBetween(before, after, 'x')));
        expect(applyEdit(before, edit)).toEqual(after);
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
