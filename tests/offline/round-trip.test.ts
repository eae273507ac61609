// The cells of two public test sets through the built page: read in, edited, kept, loaded again, saved as tables and read
// in once more. Not a character may change.
import { readdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import Papa from 'papaparse';
import { beforeAll, describe, expect, it } from 'vitest';
import { deskViews } from '../../components/desk/views.js';
import { guardedPage, type Desk } from './guarded-page.js';

const { open } = guardedPage();
const require = createRequire(import.meta.url);
const naughty = require('big-list-of-naughty-strings/blns.json') as string[];
const spectrum = join(dirname(require.resolve('csv-spectrum/package.json')), 'csvs');

const night = ['2027-03-02 23:00', '2027-03-03 05:00'];

/** What a file holds by the package's own JSON; of one its JSON gives another telephone number than its CSV. */
function recordsOf(name: string, text: string): Record<string, string>[] {
  if (name === 'location_coordinates.csv')
    return Papa.parse<Record<string, string>>(text, { header: true }).data;
  const path = join(spectrum, '../json', name.replace('.csv', '.json'));
  return JSON.parse(readFileSync(path, 'utf8')) as Record<string, string>[];
}

/** The table of windows as it stands, saved as CSV and as a workbook and read in again, each in place of it. */
async function expectBack(desk: Desk): Promise<void> {
  const { columns, rows } = await desk.table('windows');
  for (const [label, name] of [
    ['Tables as CSV', 'back.csv'],
    ['Tables as a workbook', 'back.xlsx'],
  ] as const) {
    const files = await desk.saves(label, 1);
    const heading = columns[0]!;
    const file =
      name === 'back.xlsx'
        ? files[0]!
        : files.find(({ bytes }) => {
            const text = new TextDecoder().decode(bytes);
            return Papa.parse<string[]>(text, { preview: 1 }).data[0]?.[0] === heading;
          })!;
    await desk.give(name, file.bytes);
    if (name === 'back.xlsx') await desk.choose('sheet', 'windows');
    await desk.choose('kind', 'windows');
    await desk.take();
    const back = await desk.table('windows');
    expect(back.columns, name).toEqual(columns);
    expect(back.rows, name).toEqual(rows);
  }
}

describe('in the built page', () => {
  it('every naughty string stays what it is: read, edited, kept, loaded again, saved and read back', async () => {
    const desk = await open();
    const columns = ['window', 'title', 'start', 'end', 'remark'];
    const rows = naughty.map((text, at) => [`W${at}`, text, ...night, text]);
    await desk.give('naughty.csv', Papa.unparse([columns, ...rows]));
    await desk.take();
    expect((await desk.table('windows')).rows).toEqual(rows);

    await desk.go('table');
    await desk.type(3, 'remark', '=SUM(1) "typed", <b>here</b>');
    const edited = rows.map((row, at) =>
      at === 3 ? [...row.slice(0, 4), '=SUM(1) "typed", <b>here</b>'] : row,
    );
    expect((await desk.table('windows')).rows).toEqual(edited);
    await desk.saved();
    await desk.reload();
    expect((await desk.table('windows')).rows).toEqual(edited);
    await expectBack(desk);
    await desk.expectAlive(deskViews);
    await desk.close();
  });
});

describe('in the built page, one after the other in place of the windows', () => {
  let desk: Desk;
  beforeAll(async () => {
    desk = await open();
  });

  it.each(readdirSync(spectrum).filter((name) => name.endsWith('.csv')))(
    '%s of csv-spectrum comes back whole',
    async (name) => {
      const text = readFileSync(join(spectrum, name), 'utf8');
      const records = recordsOf(name, text);
      await desk.give(name, text);
      await desk.choose('kind', 'windows');
      await desk.take();
      const table = await desk.table('windows');
      expect(table.columns).toEqual(Object.keys(records[0]!));
      const plain = (cell: string): string => cell.replaceAll('\r\n', '\n');
      expect(table.rows.map((row) => row.map(plain))).toEqual(
        records.map((record) => Object.values(record).map(plain)),
      );
      await desk.saved();
      await desk.reload();
      expect(await desk.table('windows')).toEqual(table);
      await expectBack(desk);
      await desk.expectAlive(['windows', 'files']);
    },
  );
});
