import { describe, expect, it } from 'vitest';
import { createInlineEngine } from '../../../src/engine/index.js';
import type {
  ImportChoices,
  ImportPreview,
  ImportResult,
  Progress,
} from '../../../src/engine/types.js';
import { planFromDocument } from '../../../src/tables/index.js';
import { workbookOf } from '../../../src/tables/workbook/write-workbook.js';
import type { PlanDocument } from '../../../src/model/index.js';
import { emptyDocument } from '../../helpers/sample.js';

const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text);
const take = (
  content: string | Uint8Array,
  choices: ImportChoices = {},
  into: PlanDocument = emptyDocument,
): Promise<ImportResult> =>
  createInlineEngine().importFiles(
    [{ name: 'file', bytes: typeof content === 'string' ? utf8(content) : content, choices }],
    into,
  );
const previewOf = async (...given: Parameters<typeof take>): Promise<ImportPreview> =>
  (await take(...given)).report[0]!.preview!;
const nights = 'window,start,end\nW1,2027-03-02 23:00,05:00\nW2,2027-03-03 23:00,05:00\n';

describe('the preview of a table', () => {
  it('says what was found and what each choice would touch', async () => {
    const preview = await previewOf(
      'window;start;end;hut\nW1;03/04/2027 23:00;05:00;£red\nW2;13/04/2027 23:00;05:00;\n',
    );
    expect(preview.chosen).toEqual({
      encoding: 'utf-8',
      delimiter: ';',
      sheet: null,
      headingLine: 1,
      dateOrder: 'day-first',
      kind: 'windows',
      take: 'replace',
      leave: false,
    });
    expect(preview.encodings).toContainEqual({ encoding: 'windows-1252', lines: 1 });
    expect(preview.delimiters).toContainEqual({ delimiter: ';', columns: 4, lines: 3, even: 3 });
    expect(preview.dates).toMatchObject({ settled: true, dayFirstOnly: 1, eitherWay: 1 });
    expect(preview.columns.map((column) => column.field)).toEqual(['window', 'start', 'end', null]);
    expect(preview.effects!.replace).toMatchObject({ before: 0, after: 2, added: 2 });
  });

  it('finds the headings below a title, and keeps the title', async () => {
    const { document, report } = await take(
      `Nights of the renewal\nissue;3\n\nwindow;start;end\nW1;2027-03-02 23:00;05:00\n`,
    );
    expect(report[0]).toMatchObject({ kind: 'windows', delimiter: ';', rows: 1, faults: [] });
    expect(report[0]!.preview).toMatchObject({ above: 2, chosen: { headingLine: 4 } });
    expect(document.tables.windows.above).toEqual([['Nights of the renewal'], ['issue', '3']]);
  });

  it('is absent where no choice is offered', async () => {
    const { report } = await createInlineEngine().importFiles(
      [{ name: 'w.csv', bytes: utf8(nights) }],
      emptyDocument,
    );
    expect(report[0]!.preview).toBeUndefined();
  });
});

describe('what is chosen holds', () => {
  it('for the order of dates, after the plan is saved too', async () => {
    const text = 'window,start,end\nW1,03/04/2027 23:00,05:00\n';
    const startOf = async (choices: ImportChoices): Promise<string> => {
      const { document } = await take(text, choices);
      return new Date(planFromDocument(document).plan.windows[0]!.start).toISOString();
    };
    expect(await startOf({})).toBe('2027-04-03T22:00:00.000Z');
    expect(await startOf({ dateOrder: 'month-first' })).toBe('2027-03-04T23:00:00.000Z');
  });

  it('for the encoding and the delimiter', async () => {
    const latin = new Uint8Array([...utf8('window,start,end,t\nW1,a,b,'), 0xa3, 0x0a]);
    expect((await take(latin)).document.tables.windows.rows[0]![3]).toBe('£');
    expect((await take(nights, { encoding: 'utf-16le' })).report[0]!.kind).toBe('unknown');
    expect((await take(nights, { delimiter: ';' })).report[0]!.kind).toBe('unknown');
  });

  it('for the kind, the line of headings and the columns, doubled and blank headings too', async () => {
    const text = 'a title\nid,from,to,to,\nW1,2027-03-02 23:00,x,05:00,Up\n';
    const map = {
      window: 'id',
      start: 'from',
      end: 'column 4',
      from: '',
      to: '',
      lines: 'column 5',
    };
    const { document, report } = await take(text, {
      kind: 'windows',
      headingLine: 2,
      map,
      unread: ['column 3'],
    });
    expect(report[0]!.faults).toEqual([]);
    expect(report[0]!.unmatched).toEqual(['to']);
    expect(planFromDocument(document).plan.windows[0]).toMatchObject({ id: 'W1', lines: ['Up'] });
  });

  it('for the way of taking: replace, add or bring up to date', async () => {
    const { document } = await take(nights);
    const next = 'window,start,end\nW2,2027-03-03 23:00,06:00\nW3,2027-03-04 23:00,05:00\n';
    const idsBy = async (how: ImportChoices): Promise<string[]> =>
      (await take(next, how, document)).document.tables.windows.rows.map((row) => row[0]!);
    expect(await idsBy({})).toEqual(['W2', 'W3']);
    expect(await idsBy({ take: 'append' })).toEqual(['W1', 'W2', 'W2', 'W3']);
    expect(await idsBy({ take: 'update' })).toEqual(['W1', 'W2', 'W3']);
    expect(await idsBy({ leave: true })).toEqual(['W1', 'W2']);
    expect((await previewOf(next, {}, document)).effects).toMatchObject({
      replace: { before: 2, after: 2, removed: 1 },
      append: { after: 4, twice: 1 },
      update: { after: 3, added: 1, changed: 1, removed: 0 },
    });
  });

  it('for the sheet of a workbook, whose faults name sheet, row and column', async () => {
    const book = workbookOf([
      { name: 'Notes', columns: ['remark'], rows: [['x']] },
      {
        name: 'Nights',
        columns: ['window', 'start', 'end'],
        rows: [['W1', '2027-02-31 23:00', '05:00']],
      },
      { name: 'Gangs', columns: ['resource', 'capacity'], rows: [['gang', 2]] },
    ]);
    const first = (await take(book)).report[0]!;
    expect(first).toMatchObject({ kind: 'windows', file: 'file, sheet Nights' });
    expect(first.faults[0]).toMatchObject({ file: 'file, sheet Nights', line: 2, column: 'start' });
    expect(first.preview!.sheets.map((sheet) => sheet.name)).toEqual(['Notes', 'Nights', 'Gangs']);
    expect((await take(book, { sheet: 'Gangs' })).document.tables.resources.rows).toEqual([
      ['gang', '2'],
    ]);
  });
});

describe('files that are no tables', () => {
  it.each([
    ['%PDF-1.7', 'file-not-a-table'],
    ['\x1f\x8b', 'file-not-a-table'],
    ['', 'file-empty'],
    ['PK\x03\x04 broken', 'workbook-damaged'],
  ])('%j is told of and changes nothing', async (text, code) => {
    const bytes = Uint8Array.from(text, (sign) => sign.charCodeAt(0));
    const { document, report } = await take(bytes);
    expect(document).toEqual(emptyDocument);
    expect(report[0]!.faults[0]!.code).toBe(code);
  });
});

it('progress is told in bytes', async () => {
  const heard: Progress[] = [];
  const files = [
    { name: 'a', bytes: utf8(nights) },
    { name: 'b', bytes: utf8(nights) },
  ];
  await createInlineEngine().importFiles(files, emptyDocument, undefined, (item) =>
    heard.push(item),
  );
  const size = nights.length;
  expect(heard.map((item) => item.done)).toEqual([0, size, 2 * size]);
});

it('a plan goes out by the engine and comes back the same', async () => {
  const engine = createInlineEngine();
  const { document } = await take(
    'window,start,end,__proto__,my note\nW1,2027-03-02 23:00,05:00,=1+1,\nW2,03/04/2027,x,,"a\n""b"""\n',
  );
  for (const format of ['csv', 'xlsx'] as const) {
    const [file] = await engine.exportFiles(document, { format });
    const back = await engine.importFiles([file!], emptyDocument);
    expect(back.document.tables.windows.columns).toEqual(document.tables.windows.columns);
    expect(back.document.tables.windows.rows).toEqual(document.tables.windows.rows);
  }
});
