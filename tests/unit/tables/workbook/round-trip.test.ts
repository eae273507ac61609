import { createRequire } from 'node:module';
import { read, SSF, utils, write } from '@e965/xlsx';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readWorkbook } from '../../../../src/tables/workbook/read-workbook.js';
import { sheetNames, workbookOf } from '../../../../src/tables/workbook/write-workbook.js';

const naughty = createRequire(import.meta.url)('big-list-of-naughty-strings/blns.json') as string[];

const cell = fc.oneof(
  fc.string({ unit: 'binary' }),
  fc.string({
    unit: fc.constantFrom(
      '\uFFFD',
      '_',
      'x',
      '0',
      'D',
      '<',
      '&',
      '"',
      "'",
      '\r',
      '\n',
      '\t',
      '\0',
      '=',
      ' ',
      '\ud800',
      '\ufffe',
      ']]>',
    ),
  }),
  fc.constantFrom(
    '__proto__',
    'constructor',
    'toString',
    '_x0041_',
    '_x005F_',
    '=1+1',
    '-12.50',
    '007',
    '1E5',
  ),
);

const cellsOf = async (bytes: Uint8Array): Promise<(readonly string[])[]> => {
  const { sheets, faults } = await readWorkbook(bytes);
  expect(faults).toEqual([]);
  return sheets[0]!.rows.map((row) => row.cells);
};

describe('a workbook written here', () => {
  it('is read back here cell for cell, whatever the cells hold', async () => {
    const table = fc
      .integer({ min: 1, max: 4 })
      .chain((width) =>
        fc.array(fc.array(cell, { minLength: width, maxLength: width }), { maxLength: 5 }),
      );
    await fc.assert(
      fc.asyncProperty(table, async (body) => {
        // A last column that is never blank: a sheet does not hold blank cells at an edge.
        const rows = body.map((row) => [...row, 'end']);
        const columns = [...(body[0] ?? []).map((_, at) => `c${at}`), 'last'];
        expect(await cellsOf(workbookOf([{ name: 'T', columns, rows }]))).toEqual([
          columns,
          ...rows,
        ]);
      }),
      { numRuns: 300 },
    );
  });

  // @e965/xlsx 0.20.3 shares no code with the writer or with the reader used here.
  it('is read by another reader: text as text, numbers as numbers, no formula anywhere', () => {
    const rows = naughty.map((text, at) => [text, at - 200.5]);
    const book = read(workbookOf([{ name: 'Strings', columns: ['text', 'number'], rows }]), {
      cellFormula: true,
    });
    expect(book.SheetNames).toEqual(['Strings']);
    const sheet = book.Sheets['Strings']!;
    naughty.forEach((text, at) => {
      const [a, b] = [sheet[`A${at + 2}`], sheet[`B${at + 2}`]];
      if (text === '') expect(a).toBeUndefined();
      else expect([a.t, a.v, a.f]).toEqual(['s', text, undefined]);
      expect([b.t, b.v, b.f]).toEqual(['n', at - 200.5, undefined]);
    });
  });

  it('gives the same bytes for the same tables', () => {
    const made = (): Uint8Array => workbookOf([{ name: 'T', columns: ['a'], rows: [['x']] }]);
    expect(made()).toEqual(made());
  });

  it('names its sheets as a workbook may', () => {
    expect(sheetNames(["[a]:*?/\\b'", '', 'x'.repeat(40), 'Work', 'work', 'WORK'])).toEqual([
      'a      b',
      'Table',
      'x'.repeat(31),
      'Work',
      'work 2',
      'WORK 3',
    ]);
  });

  it('refuses what a sheet cannot hold', () => {
    expect(() => workbookOf([])).toThrow(RangeError);
    expect(() => workbookOf([{ name: 'T', columns: ['a'], rows: [[Number.NaN]] }])).toThrow(
      RangeError,
    );
    const wide = Array.from({ length: 16_385 }, () => 'a');
    expect(() => workbookOf([{ name: 'T', columns: wide, rows: [] }])).toThrow(
      /larger than a sheet/,
    );
  });
});

describe('a workbook written elsewhere', () => {
  const bytesOf = (cells: object, more: object = {}, props: object = {}): Uint8Array =>
    new Uint8Array(
      write(
        {
          SheetNames: ['Nights'],
          Sheets: { Nights: { '!ref': 'A1:D9', ...cells, ...more } },
          ...props,
        },
        { type: 'array', bookType: 'xlsx', cellDates: false } as never,
      ) as ArrayBuffer,
    );
  const n = (v: number, z: string): object => ({ t: 'n', v, z });

  it.each([
    ['a day', n(46474, 'yyyy-mm-dd'), '2027-03-28'],
    ['a day and time', n(46474 + 23.5 / 24, 'dd/mm/yyyy hh:mm'), '2027-03-28 23:30'],
    ['a time that is a third of a day', n(46474 + 1 / 3, 'd mmm yyyy h:mm'), '2027-03-28 08:00'],
    ['midnight said', n(46474, 'dd/mm/yyyy hh:mm'), '2027-03-28 00:00'],
    ['a time of day', n(5.5 / 24, 'hh:mm'), '05:30'],
    ['a time of day with its half', n(17.25 / 24, 'h:mm AM/PM'), '17:15'],
    ['a time with seconds', n(5.5 / 24 + 7 / 86400, 'hh:mm:ss'), '05:30:07'],
    ['a length of time', n(26.5 / 24, '[h]:mm'), '26:30'],
    ['a length of 70 days', n(70, '[h]:mm'), '1680:00'],
    ['a time whose day is hidden', n(46474 + 0.25, 'hh:mm'), '2027-03-28 06:00'],
    ['a share', n(0.45, '0%'), '45%'],
    ['a share with a part', n(0.0725, '0.00%'), '7.25%'],
    ['a number', n(0.1 + 0.2, 'General'), '0.3'],
    ['a long number', n(123456789012, '0'), '123456789012'],
    ['a small number', n(0.0000001, 'General'), '0.0000001'],
    ['a number with a coloured format', n(-3, '[Red]-0.0'), '-3'],
    ['money', n(1200.5, '"d £"#,##0.00'), '1200.5'],
    ['yes', { t: 'b', v: true }, 'TRUE'],
    ['text that looks like a number', { t: 's', v: '007' }, '007'],
  ])('holds %s', async (_, made, text) => {
    expect((await cellsOf(bytesOf({ A1: { t: 's', v: 'h' }, A2: made })))[1]).toEqual([text]);
  });

  it('that counts days from 1904 holds the same days and times', async () => {
    const cells = {
      A1: { t: 's', v: 'h' },
      A2: n(45012 + 0.5, 'dd/mm/yyyy hh:mm'),
      A3: n(0.25, 'hh:mm'),
      A4: n(2.5, '[h]:mm'),
    };
    const book = bytesOf(cells, {}, { Workbook: { WBProps: { date1904: true } } });
    expect(await cellsOf(book)).toEqual([['h'], ['2027-03-28 12:00'], ['06:00'], ['60:00']]);
  });

  it('gives the stored value of a formula, and an error as text with a warning', async () => {
    const cells = {
      A1: { t: 's', v: 'minutes' },
      A2: { t: 'n', v: 90, f: 'B2*60' },
      B1: { t: 's', v: 'other' },
      B2: { t: 's', v: 'x' },
      A3: { t: 'e', v: 0x2a, w: '#N/A' },
      B3: { t: 's', v: 'y' },
    };
    const { sheets } = await readWorkbook(bytesOf(cells));
    expect(sheets[0]!.rows.map((row) => row.cells)).toEqual([
      ['minutes', 'other'],
      ['90', 'x'],
      ['#N/A', 'y'],
    ]);
    expect(sheets[0]!.faults).toMatchObject([
      { record: 2, column: 0, fault: { code: 'cell-in-error', line: 3 } },
    ]);
  });

  it('gives every row of a cell merged downwards its value, and says so', async () => {
    const cells = {
      A1: { t: 's', v: 'package' },
      B1: { t: 's', v: 'activity' },
      A2: { t: 's', v: 'Deck' },
      B2: { t: 's', v: 'A1' },
      B3: { t: 's', v: 'A2' },
    };
    const merged = { '!merges': [{ s: { r: 1, c: 0 }, e: { r: 2, c: 0 } }] };
    const { sheets } = await readWorkbook(bytesOf(cells, merged));
    expect(sheets[0]!.rows.map((row) => row.cells)).toEqual([
      ['package', 'activity'],
      ['Deck', 'A1'],
      ['Deck', 'A2'],
    ]);
    expect(sheets[0]!.faults).toMatchObject([
      { fault: { code: 'cells-merged', severity: 'warning', line: 2 } },
    ]);
  });

  it('reads every minute of a day and of the years that plans are for as another formatter does', async () => {
    const serials = Array.from({ length: 1440 }, (_, at) => 44562 + 7 * at + at / 1440);
    const cells = Object.fromEntries(
      serials.map((serial, at) => [`A${at + 2}`, n(serial, 'yyyy-mm-dd hh:mm')]),
    );
    const book = bytesOf({ A1: { t: 's', v: 'h' }, ...cells, '!ref': 'A1:A1441' });
    const told = serials.map((serial) => [SSF.format('yyyy-mm-dd hh:mm', serial + 1e-7) as string]);
    expect((await cellsOf(book)).slice(1)).toEqual(told);
  });

  it('numbers rows as the sheet does, past blank ones', async () => {
    const { sheets } = await readWorkbook(
      bytesOf({ A3: { t: 's', v: 'h' }, A7: { t: 's', v: 'x' } }),
    );
    expect(sheets[0]!.rows.map((row) => row.line)).toEqual([3, 7]);
  });

  it('has its sheets in order, with the hidden ones told', async () => {
    const book = utils.book_new();
    utils.book_append_sheet(book, utils.aoa_to_sheet([['a'], ['1']]), 'One');
    utils.book_append_sheet(book, utils.aoa_to_sheet([['b']]), 'Two & <3>');
    book.Workbook = {
      Sheets: [
        { name: 'One', Hidden: 1 },
        { name: 'Two & <3>', Hidden: 0 },
      ],
    } as never;
    const bytes = new Uint8Array(write(book, { type: 'array', bookType: 'xlsx' }) as ArrayBuffer);
    const { sheets } = await readWorkbook(bytes);
    expect(sheets.map((sheet) => [sheet.name, sheet.hidden])).toEqual([
      ['One', true],
      ['Two & <3>', false],
    ]);
  });
});
