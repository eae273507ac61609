import { describe, expect, it } from 'vitest';
import { headingAsks, withHeading } from '../../../src/engine/heading-answers.js';
import type { TableText } from '../../../src/model/index.js';
import { planFromDocument } from '../../../src/tables/index.js';
import { aDocument, tableOf } from '../../helpers/documents.js';

const windows = (heading: string, cell = 'Up'): TableText =>
  tableOf('windows.csv', `window,start,end,${heading}\nW1,2027-03-02 23:00,05:00,${cell}`);
const read = (table: TableText) => planFromDocument(aDocument('One night', { windows: table }));
const refused = (table: TableText) =>
  read(table).faults.filter((fault) => fault.code === 'heading-not-read');

describe('a heading for which a table is refused', () => {
  it.each(['Gleis', 'Blokked lnes', 'Trax', ''])('is asked about: %j', (heading) => {
    const table = windows(heading);
    expect(refused(table)).toHaveLength(1);
    const [ask, ...more] = headingAsks(table, 'windows');
    expect(more).toEqual([]);
    expect(ask).toMatchObject({
      heading: heading || 'column 4',
      problem: { code: 'heading-not-read', sentence: refused(table)[0]!.sentence },
      likely: expect.arrayContaining(['lines']) as unknown,
    });
  });

  it('holds what is said of it, whatever that is, and the table is used', () => {
    const table = windows('Trax');
    const [ask] = headingAsks(table, 'windows');
    for (const field of ['', ...ask!.free]) {
      const said = withHeading(table, ask!.entry, field);
      expect({ field, refused: refused(said) }).toEqual({ field, refused: [] });
      expect(headingAsks(said, 'windows')).toEqual([]);
      // Nothing typed is changed.
      expect([said.columns, said.rows]).toEqual([table.columns, table.rows]);
    }
    expect(read(withHeading(table, ask!.entry, 'lines')).plan.windows[0]!.lines).toEqual(['Up']);
    expect(read(withHeading(table, ask!.entry, 'title')).plan.windows[0]!.title).toBe('Up');
  });

  it('is told from another that may hold the same, and the one that is meant is read', () => {
    const table = tableOf(
      'windows.csv',
      'window,start,end,lines,isolation,status,possession lines\nW1,2027-03-02 23:00,05:00,Up,,confirmed,Down',
    );
    const [ask, ...more] = headingAsks(table, 'windows');
    expect(more).toEqual([]);
    expect(ask!.likely[0]).toBe('lines');
    const linesOf = (field: string) =>
      read(withHeading(table, ask!.entry, field)).plan.windows[0]!.lines;
    expect(linesOf('lines')).toEqual(['Down']);
    expect(linesOf('')).toEqual(['Up']);
  });

  it('may be said anew: the last word counts', () => {
    const table = windows('Trax');
    const { entry } = headingAsks(table, 'windows')[0]!;
    const said = ['', 'title', 'lines'].reduce(
      (now, field) => withHeading(now, entry, field),
      table,
    );
    expect(said).toMatchObject({ map: { lines: 'Trax' }, unread: [] });
    expect(withHeading(said, entry, '')).toMatchObject({ map: {}, unread: ['Trax'] });
  });

  it('asks nothing of a table that is read', () => {
    expect(headingAsks(windows('lines'), 'windows')).toEqual([]);
  });
});
