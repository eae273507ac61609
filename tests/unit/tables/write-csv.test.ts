import { createRequire } from 'node:module';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  guarded,
  looksLikeFormula,
  readTable,
  unguarded,
  writeCsv,
} from '../../../src/tables/index.js';

const delimiters = [',', ';', '\t', '|'];
const naughty = createRequire(import.meta.url)('big-list-of-naughty-strings/blns.json') as string[];

/** Any text, often one that begins as a formula or a guard does, or holds what CSV treats specially. */
const text = fc.oneof(
  fc.string({ unit: 'binary' }),
  fc.string({
    unit: fc.constantFrom(
      "'",
      '"',
      '=',
      '+',
      '-',
      '@',
      '\t',
      '\r',
      '\n',
      '\0',
      ',',
      ';',
      '|',
      ' ',
      '1',
      'a',
      '＝',
      '\uFEFF',
      '\uFFFD',
    ),
  }),
);

describe('writing and reading back', () => {
  it('gives the same headings and cells, whatever they hold', () => {
    const shape = fc
      .integer({ min: 1, max: 4 })
      .chain((width) =>
        fc.tuple(
          fc.array(text, { minLength: width, maxLength: width }),
          fc.array(fc.array(text, { minLength: width, maxLength: width }), { maxLength: 5 }),
          fc.constantFrom(...delimiters),
          fc.boolean(),
        ),
      );
    fc.assert(
      fc.property(shape, ([columns, rows, delimiter, guard]) => {
        const table = readTable(writeCsv(columns, rows, { delimiter, guard }), {
          delimiter,
          guard,
        });
        expect(table.columns).toEqual(columns);
        expect(table.rows.map((row) => row.cells)).toEqual(rows);
        // The sign that stands for a damaged letter is told of, as it is in a file that lost one.
        const damaged = [...columns, ...rows.flat()].filter((cell) => cell.includes('\uFFFD'));
        expect(table.faults).toHaveLength(damaged.length);
      }),
      { numRuns: 1000 },
    );
  });

  // big-list-of-naughty-strings 1.0.0 (npm): text known to break programs that take it in.
  it('gives back every one of the big list of naughty strings', () => {
    expect(naughty).toHaveLength(461);
    const rows = naughty.map((item, index) => [item, String(index)]);
    const table = readTable(writeCsv(['text', 'number'], rows));
    expect(table.rows.map((row) => row.cells)).toEqual(rows);
    expect(table.faults).toEqual([]);
  });

  it('finds the delimiter of its own files by itself', () => {
    for (const delimiter of delimiters) {
      const csv = writeCsv(
        ['a', 'b', 'c'],
        [
          ['1,5', 'x;y', 'p|q'],
          ['2', 'z', ''],
        ],
        { delimiter },
      );
      expect(readTable(csv)).toMatchObject({ delimiter, columns: ['a', 'b', 'c'] });
    }
  });

  it('keeps a first heading that looks like an instruction', () => {
    expect(readTable(writeCsv(['sep=;', 'b'], [])).columns).toEqual(['sep=;', 'b']);
  });
});

describe('the guard against formulas', () => {
  it.each([
    '=1+1',
    '+1+1',
    '-1+1',
    '@SUM(A)',
    ' =1',
    '\t1',
    '\r1',
    '\n1',
    '\0=1',
    '＝1',
    '＋1',
    '－1',
    '＠x',
    '\u200b=1',
    '+44 20',
    '-',
    '-1e5',
    '=',
    '\u00a0@x',
  ])('is put on %j', (cell) => {
    expect(guarded(cell)).toBe(`'${cell}`);
    expect(unguarded(guarded(cell))).toBe(cell);
    expect(looksLikeFormula(guarded(cell))).toBe(false);
  });

  it.each([
    '',
    'W1',
    '-12.50',
    '+5',
    '-3',
    'a=b',
    '1-2',
    "'quoted'",
    "it's",
    '2027-03-28',
    '£-5',
    'Up;Down',
  ])('leaves %j alone', (cell) => {
    expect(guarded(cell)).toBe(cell);
    expect(unguarded(cell)).toBe(cell);
  });

  it('leaves numbers as they are', () => {
    expect(writeCsv(['n'], [[-12.5], [0], [null], [undefined]])).toBe(
      'n\r\n-12.5\r\n0\r\n""\r\n""\r\n',
    );
  });

  it('can be left off', () => {
    expect(writeCsv(['n'], [['=1']], { guard: false })).toBe('n\r\n=1\r\n');
  });

  it('is never reached by what is written in other cells: a written field cannot begin a formula', () => {
    fc.assert(
      fc.property(text, (cell) => {
        const [field] = readTable(writeCsv(['c'], [[cell]]), { guard: false, delimiter: ',' }).rows;
        expect(looksLikeFormula(field?.cells[0] ?? '')).toBe(false);
      }),
    );
  });

  it('refuses a number that is none', () => {
    expect(() => writeCsv(['n'], [[Number.NaN]])).toThrow(RangeError);
  });
});
