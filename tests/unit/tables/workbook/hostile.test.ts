// Workbooks made to do harm, as zip archives built here. Limits: see archive.ts.
import { processorMs } from '../../../helpers/processor-clock.js';
import { strToU8, unzipSync, zipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { readWorkbook } from '../../../../src/tables/workbook/read-workbook.js';
import { workbookOf } from '../../../../src/tables/workbook/write-workbook.js';
import { unpack } from '../../../../src/tables/workbook/archive.js';

const plain = (): Uint8Array =>
  workbookOf([{ name: 'T', columns: ['window', 'start'], rows: [['W1', '2027-03-28 23:30']] }]);
const parts = (): Record<string, Uint8Array> => Object.fromEntries(unpack(plain(), () => true));
const faultOf = async (bytes: Uint8Array): Promise<string | undefined> => {
  const { sheets, faults } = await readWorkbook(bytes);
  expect(sheets).toEqual([]);
  return faults[0]?.code;
};
/** Changes bytes of the directory entry of a part: offsets are those of the entry. */
const changed = (bytes: Uint8Array, name: string, offset: number, value: number): Uint8Array => {
  const copy = bytes.slice();
  const view = new DataView(copy.buffer);
  for (let at = 0; at < copy.length - 46; at += 1) {
    if (view.getUint32(at, true) !== 0x02014b50) continue;
    const length = view.getUint16(at + 28, true);
    if (new TextDecoder().decode(copy.subarray(at + 46, at + 46 + length)) === name)
      view.setUint32(at + offset, value, true);
  }
  return copy;
};
const sheet = 'xl/worksheets/sheet1.xml';

describe('a workbook made to do harm', () => {
  it('that unpacks to far more than it packs is refused before it is unpacked', async () => {
    const bomb = zipSync({ ...parts(), [sheet]: new Uint8Array(60 * 1024 * 1024) }, { level: 9 });
    expect(bomb.length).toBeLessThan(100_000);
    const began = processorMs();
    expect(await faultOf(bomb)).toBe('workbook-too-large');
    const refused = processorMs() - began;
    unzipSync(bomb);
    expect(refused).toBeLessThan((processorMs() - began - refused) / 2);
  });

  it('with a part of more than 64 MB is refused, whoever needs the part', async () => {
    const big = { ...parts(), 'xl/media/picture.bin': new Uint8Array(65 * 1024 * 1024) };
    expect(await faultOf(zipSync(big, { level: 1 }))).toBe('workbook-too-large');
  });

  it('with more than 200 parts is refused', async () => {
    const many = Object.fromEntries(
      Array.from({ length: 201 }, (_, at) => [`xl/media/${at}.bin`, new Uint8Array(1)]),
    );
    expect(await faultOf(zipSync({ ...parts(), ...many }))).toBe('workbook-too-large');
  });

  it('whose part holds more than its directory says is refused and not cut short', async () => {
    const long = zipSync({
      ...parts(),
      [sheet]: strToU8(`<worksheet>${'<row/>'.repeat(50_000)}</worksheet>`),
    });
    expect(await faultOf(changed(long, sheet, 24, 1000))).toBe('workbook-damaged');
  });

  it('whose part holds less than its directory says is refused', async () => {
    expect(await faultOf(changed(plain(), sheet, 24, 500_000))).toBe('workbook-damaged');
  });

  it('with a wrong checksum is refused', async () => {
    expect(await faultOf(changed(plain(), sheet, 16, 12345))).toBe('workbook-damaged');
  });

  it('cut off at any place is refused with a stated fault', async () => {
    const bytes = plain();
    for (let length = 4; length < bytes.length; length += 97) {
      expect(await faultOf(bytes.subarray(0, length))).toMatch(/^workbook-/);
    }
  });

  it('with any one byte changed is refused or read as it was', async () => {
    const bytes = plain();
    for (let at = 0; at < bytes.length; at += 13) {
      const copy = bytes.slice();
      copy[at] = copy[at]! ^ 0x55;
      const { sheets, faults } = await readWorkbook(copy);
      if (faults.length === 0)
        expect(sheets[0]!.rows[1]?.cells).toEqual(['W1', '2027-03-28 23:30']);
    }
  });

  it.each([
    ['a declaration', '<!DOCTYPE x [<!ENTITY a "aaaaaaaaaa"><!ENTITY b "&a;&a;">]>'],
    ['a request for a file', '<!DOCTYPE x SYSTEM "file:///etc/passwd">'],
  ])('with %s is refused', async (_, declaration) => {
    const made = {
      ...parts(),
      [sheet]: strToU8(`<?xml version="1.0"?>${declaration}<worksheet/>`),
    };
    expect(await faultOf(zipSync(made))).toBe('workbook-refused');
  });

  it('with a cell in its farthest corner is refused, and does not fill the memory', async () => {
    const corner = strToU8(
      '<worksheet><sheetData><row r="1"><c r="A1"><v>1</v></c></row><row r="1048576"><c r="XFD1048576"><v>1</v></c></row></sheetData></worksheet>',
    );
    expect(await faultOf(zipSync({ ...parts(), [sheet]: corner }))).toBe('workbook-not-read');
  });

  it('that is locked with a password is told apart', async () => {
    expect(await faultOf(changed(plain(), sheet, 8, 1 | (8 << 16)))).toBe('workbook-locked');
  });

  it('with a formula whose value is not stored has a blank cell and says so', async () => {
    const made = strToU8(
      '<worksheet><sheetData><row r="1"><c r="A1" t="inlineStr"><is><t>h</t></is></c></row><row r="2"><c r="A2"><f>1+1</f></c><c r="B2"><v>3</v></c></row></sheetData></worksheet>',
    );
    const { sheets } = await readWorkbook(zipSync({ ...parts(), [sheet]: made }));
    expect(sheets[0]!.rows.map((row) => row.cells)).toEqual([
      ['h', ''],
      ['', '3'],
    ]);
    expect(sheets[0]!.faults).toMatchObject([
      { record: 1, column: 0, fault: { code: 'formula-without-value' } },
    ]);
  });

  it('with headings that name an object’s inner workings keeps them as text', async () => {
    const made = workbookOf([
      { name: '__proto__', columns: ['__proto__', 'constructor'], rows: [['x', 'y']] },
    ]);
    const { sheets } = await readWorkbook(made);
    expect(sheets[0]!.rows.map((row) => row.cells)).toEqual([
      ['__proto__', 'constructor'],
      ['x', 'y'],
    ]);
    expect(({} as Record<string, unknown>)['x']).toBeUndefined();
  });
});
