import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { TableText } from '../../../src/model/index.js';
import { parseChainage } from '../../../src/tables/parse/chainage.js';
import { parseDuration } from '../../../src/tables/parse/duration.js';
import { findDates, yearFirst } from '../../../src/tables/dates/date-finding.js';
import { mergeTables } from '../../../src/tables/merge-tables.js';
import { readTable } from '../../../src/tables/index.js';

const table = (text: string, more: Partial<TableText> = {}): TableText => {
  const { columns, rows } = readTable(text);
  return {
    file: 't.csv',
    columns: [...columns],
    rows: rows.map((row) => [...row.cells]),
    ...more,
  };
};

const before = table(`window,start,end,foreman
W1,2027-03-02 23:00,05:00,Ash
W2,2027-03-03 23:00,05:00,Birch
`);

describe('bringing a table up to date', () => {
  const next = table(`Possession,end,start,remark
W2,06:00,2027-03-03 23:00,longer
W9,05:00,2027-03-09 23:00,new
`);

  it('changes the cells of rows by their name, adds the others at the end and deletes nothing', () => {
    const { table: made, effect } = mergeTables('windows', before, next, 'update');
    expect(made.columns).toEqual(['window', 'start', 'end', 'foreman', 'remark']);
    expect(made.rows).toEqual([
      ['W1', '2027-03-02 23:00', '05:00', 'Ash'],
      ['W2', '2027-03-03 23:00', '06:00', 'Birch', 'longer'],
      ['W9', '2027-03-09 23:00', '05:00', '', 'new'],
    ]);
    expect(effect).toEqual({
      before: 2,
      after: 3,
      added: 1,
      changed: 1,
      unchanged: 0,
      removed: 0,
      twice: 0,
    });
  });

  it('leaves what stands where the cell that comes is blank', () => {
    const blank = table('window,start,end\nW1,,\n');
    const { table: made, effect } = mergeTables('windows', before, blank, 'update');
    expect(made.rows).toEqual(before.rows);
    expect(effect).toMatchObject({ changed: 0, unchanged: 1 });
  });

  it('takes rows of one name in their order', () => {
    const stands = table('resource,capacity\ncrane,1\ncrane,2\n');
    const comes = table('resource,capacity\ncrane,3\ncrane,4\ncrane,5\n');
    const { table: made } = mergeTables('resources', stands, comes, 'update');
    expect(made.rows).toEqual([
      ['crane', '3'],
      ['crane', '4'],
      ['crane', '5'],
    ]);
  });

  it('counts what replacing and adding would do', () => {
    expect(mergeTables('windows', before, next, 'replace').effect).toMatchObject({
      after: 2,
      added: 1,
      changed: 1,
      removed: 1,
    });
    expect(mergeTables('windows', before, next, 'append').effect).toMatchObject({
      after: 4,
      added: 2,
      twice: 1,
      removed: 0,
    });
  });

  it('keeps cells beyond the headings, and headings that are blank or there twice', () => {
    const stands = table('window,start,end,,note,note\nW1,a,b,c,d,e,spare\n');
    const comes = table('window,start,end,,note,note\nW2,A,B,C,D,E,more\n');
    const { table: made } = mergeTables('windows', stands, comes, 'append');
    expect(made.columns).toEqual(stands.columns);
    expect(made.rows[1]).toEqual(['W2', 'A', 'B', 'C', 'D', 'E', 'more']);
  });

  it('a second time changes nothing more', () => {
    const cell = fc.constantFrom('', 'a', 'b', '__proto__');
    const rows = fc.array(fc.tuple(fc.constantFrom('W1', 'W2', 'W3', ''), cell, cell), {
      maxLength: 6,
    });
    fc.assert(
      fc.property(rows, rows, (first, second) => {
        const text = (list: [string, string, string][]): TableText => ({
          file: 't',
          columns: ['window', 'start', 'note'],
          rows: list.filter(([name]) => name !== ''),
        });
        const once = mergeTables('windows', text(first), text(second), 'update');
        const twice = mergeTables('windows', once.table, text(second), 'update');
        expect(twice.table).toEqual(once.table);
        expect(once.table.rows.length).toBe(once.effect.after);
        expect(once.effect.removed).toBe(0);
      }),
    );
  });
});

describe('what is taken in keeps its meaning', () => {
  it('where dates are written the other way round', () => {
    const stands = table('window,start,end\nW1,28/03/2027 23:00,05:00\n');
    const comes = table(
      'window,start,end\nW2,03/29/2027 23:00,03/30/2027 05:00\nW3,04/03/2027,x\n',
    );
    const { table: made, rewritten } = mergeTables('windows', stands, comes, 'append');
    expect(made.rows.slice(1)).toEqual([
      ['W2', '2027-03-29 23:00', '2027-03-30 05:00'],
      ['W3', '2027-04-03', 'x'],
    ]);
    expect(rewritten).toBe(3);
  });

  it('where the headings count in other units', () => {
    const stands = table('activity,minutes,from,to\nA1,90,100,200\n');
    const comes = table('activity,duration (hrs),from (km),to (km)\nA2,1.5,1.2,1.4\nA3,2 h,,\n');
    const { table: made } = mergeTables('work', stands, comes, 'append');
    expect(made.rows.slice(1)).toEqual([
      ['A2', '1.5 h', '1.2 km', '1.4 km'],
      ['A3', '2 h', '', ''],
    ]);
    expect(parseDuration('1.5 h')).toEqual({ value: 90 });
    expect(parseChainage('1.2 km', 'm')).toMatchObject({ value: 1200 });
    const back = mergeTables('work', comes, stands, 'append').table.rows[2]!;
    expect(back).toEqual(['A1', '90 min', '100 m', '200 m']);
    expect(parseDuration('90 min', 'hours')).toEqual({ value: 90 });
    expect(parseChainage('100 m', 'km')).toMatchObject({ value: 100 });
  });

  it('where a person chose the column', () => {
    const comes = table('window,anfang,ende\nW2,2027-03-04 23:00,05:00\n', {
      map: { start: 'anfang', end: 'ende' },
    });
    const { table: made } = mergeTables('windows', before, comes, 'update');
    expect(made.columns).toEqual(before.columns);
    expect(made.rows[1]).toEqual(['W2', '2027-03-04 23:00', '05:00', 'Birch']);
  });
});

describe('dates', () => {
  it('are counted by what settles their order and by what would change with it', () => {
    const text =
      'window,start,end\na,03/04/2027 23:00,04:00\nb,13/04/2027,x\nc,05/05/2027,\nd,2027-04-03,\n';
    expect(findDates(readTable(text), 'windows')).toEqual({
      order: 'day-first',
      settled: true,
      dayFirstOnly: 1,
      monthFirstOnly: 0,
      eitherWay: 1,
      example: { line: 2, text: '03/04/2027 23:00' },
    });
  });

  it('written year first mean the same whichever order is read', () => {
    expect(yearFirst('Sat 3.4.2027 23:00', 'day-first')).toBe('Sat 2027-04-03 23:00');
    expect(yearFirst('03/04/2027', 'month-first')).toBe('2027-03-04');
    expect(yearFirst('2027-04-03', 'month-first')).toBe('2027-04-03');
  });
});
