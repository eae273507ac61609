import { strToU8, zipSync } from 'fflate';
import { looksLikeFormula } from '../write/guard.js';
import type { Cell } from '../write/write-csv.js';
import { withoutEnd } from './without-end.js';

/** A table to write: text cells stay text whatever they look like, numbers are numbers. */
export interface SheetOut {
  readonly name: string;
  /** Lines above the headings. */
  readonly above?: readonly (readonly Cell[])[];
  readonly columns: readonly string[];
  readonly rows: readonly (readonly Cell[])[];
}

/** What a workbook's sheet can hold at most. @see ECMA-376 Part 1, 18.3.1.73 and 18.3.1.13 (from memory). */
export const sheetLimits = { rows: 1_048_576, columns: 16_384, cellLength: 32_767 } as const;

// A fixed moment, the first a zip archive can hold, so that the same tables make the same bytes.
const moment = '1980-01-01T00:00:00';

/**
 * Tables as an .xlsx workbook, a sheet each, the heading row in sight while the rest scrolls. It holds no formula, no
 * link and no macro. The same tables give the same bytes.
 *
 * @throws {RangeError} When there is no table, a table is larger than a sheet, or a number is not finite.
 * @see ECMA-376 Part 1, section 18.3 (worksheets), 18.4 (strings), 22.9.2.19 (escapes in text).
 */
export function workbookOf(tables: readonly SheetOut[]): Uint8Array {
  if (tables.length === 0) throw new RangeError('a workbook needs a table');
  const names = sheetNames(tables.map((table) => table.name));
  const parts: Record<string, string> = {
    '[Content_Types].xml': contentTypes(tables.length),
    '_rels/.rels': relations([['officeDocument', 'xl/workbook.xml']]),
    'xl/workbook.xml': workbookPart(names),
    'xl/_rels/workbook.xml.rels': relations([
      ...tables.map((_, at) => ['worksheet', `worksheets/sheet${at + 1}.xml`] as const),
      ['styles', 'styles.xml'],
    ]),
    'xl/styles.xml': styles,
  };
  tables.forEach((table, at) => {
    parts[`xl/worksheets/sheet${at + 1}.xml`] = sheetPart(table);
  });
  const packed = Object.entries(parts).map(([name, text]) => [name, strToU8(head + text)] as const);
  return zipSync(Object.fromEntries(packed), { level: 6, mtime: moment });
}

const head = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n';
const main = 'http://schemas.openxmlformats.org/spreadsheetml/2006/main';
const office = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships';
const packages = 'http://schemas.openxmlformats.org/package/2006';
const mime = 'application/vnd.openxmlformats-officedocument.spreadsheetml';

function contentTypes(sheets: number): string {
  const part = (name: string, type: string): string =>
    `<Override PartName="/xl/${name}.xml" ContentType="${mime}.${type}+xml"/>`;
  return (
    `<Types xmlns="${packages}/content-types">` +
    `<Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/>` +
    `<Default Extension="xml" ContentType="application/xml"/>` +
    part('workbook', 'sheet.main') +
    part('styles', 'styles') +
    Array.from({ length: sheets }, (_, at) => part(`worksheets/sheet${at + 1}`, 'worksheet')).join(
      '',
    ) +
    '</Types>'
  );
}

function relations(list: readonly (readonly [type: string, target: string])[]): string {
  const relation = ([type, target]: readonly [string, string], at: number): string =>
    `<Relationship Id="rId${at + 1}" Type="${office}/${type}" Target="${target}"/>`;
  return `<Relationships xmlns="${packages}/relationships">${list.map(relation).join('')}</Relationships>`;
}

function workbookPart(names: readonly string[]): string {
  const sheets = names.map(
    (name, at) => `<sheet name="${xml(name)}" sheetId="${at + 1}" r:id="rId${at + 1}"/>`,
  );
  return `<workbook xmlns="${main}" xmlns:r="${office}"><sheets>${sheets.join('')}</sheets></workbook>`;
}

// Formats of cells: 0 plain, 1 text, 2 text that stays text when it is edited, 3 a heading.
const styles =
  `<styleSheet xmlns="${main}">` +
  '<fonts count="2"><font><sz val="11"/><name val="Calibri"/></font><font><b/><sz val="11"/><name val="Calibri"/></font></fonts>' +
  '<fills count="2"><fill><patternFill patternType="none"/></fill><fill><patternFill patternType="gray125"/></fill></fills>' +
  '<borders count="1"><border><left/><right/><top/><bottom/><diagonal/></border></borders>' +
  '<cellStyleXfs count="1"><xf numFmtId="0" fontId="0" fillId="0" borderId="0"/></cellStyleXfs>' +
  '<cellXfs count="4">' +
  '<xf numFmtId="0" fontId="0" fillId="0" borderId="0" xfId="0"/>' +
  '<xf numFmtId="49" fontId="0" fillId="0" borderId="0" xfId="0" applyNumberFormat="1"/>' +
  '<xf numFmtId="49" fontId="0" fillId="0" borderId="0" xfId="0" applyNumberFormat="1" quotePrefix="1"/>' +
  '<xf numFmtId="49" fontId="1" fillId="0" borderId="0" xfId="0" applyNumberFormat="1" applyFont="1"/>' +
  '</cellXfs>' +
  '<cellStyles count="1"><cellStyle name="Normal" xfId="0" builtinId="0"/></cellStyles>' +
  '</styleSheet>';

function sheetPart({ name, above = [], columns, rows }: SheetOut): string {
  const width = [...above, ...rows].reduce(
    (most, row) => Math.max(most, row.length),
    columns.length,
  );
  const headingRow = above.length + 1;
  if (headingRow + rows.length > sheetLimits.rows || width > sheetLimits.columns)
    throw new RangeError(`the table "${name}" is larger than a sheet of a workbook`);
  const letters = Array.from({ length: width }, (_, at) => columnLetters(at));
  const line = (cells: readonly Cell[], row: number): string =>
    `<row r="${row}">${cells.map((cell, at) => cellPart(cell, `${letters[at]!}${row}`, row === headingRow)).join('')}</row>`;
  return (
    `<worksheet xmlns="${main}">` +
    `<sheetViews><sheetView workbookViewId="0"><pane ySplit="${headingRow}" topLeftCell="A${headingRow + 1}" activePane="bottomLeft" state="frozen"/></sheetView></sheetViews>` +
    (width === 0 ? '' : `<cols>${widths(columns, rows, width)}</cols>`) +
    `<sheetData>${[...above, columns, ...rows].map((row, at) => line(row, at + 1)).join('')}</sheetData>` +
    '</worksheet>'
  );
}

/** As wide as most cells are, in characters, between 8 and 60. */
function widths(
  columns: readonly string[],
  rows: readonly (readonly Cell[])[],
  width: number,
): string {
  const sample = rows.slice(0, 500);
  return Array.from({ length: width }, (_, at) => {
    const lengths = sample.map((row) => String(row[at] ?? '').slice(0, 60).length);
    const widest = Math.max(6, (columns[at] ?? '').slice(0, 60).length, ...lengths);
    return `<col min="${at + 1}" max="${at + 1}" width="${Math.min(60, widest + 2)}" customWidth="1"/>`;
  }).join('');
}

function cellPart(cell: Cell, place: string, heading: boolean): string {
  if (typeof cell === 'number') {
    if (!Number.isFinite(cell)) throw new RangeError(`${cell} cannot be written`);
    return `<c r="${place}"><v>${cell}</v></c>`;
  }
  const text = cell ?? '';
  if (text === '') return '';
  const style = heading ? 3 : looksLikeFormula(text) ? 2 : 1;
  return `<c r="${place}" s="${style}" t="inlineStr"><is><t xml:space="preserve">${xml(text)}</t></is></c>`;
}

/** `A` for 0, `AB` for 27. */
function columnLetters(at: number): string {
  const rest = String.fromCharCode(65 + (at % 26));
  return at < 26 ? rest : columnLetters(Math.floor(at / 26) - 1) + rest;
}

const entities: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
};

/**
 * Text inside a part. What XML cannot hold, a line break it would change, half a surrogate pair, and text that already
 * looks like such an escape are written as `_xHHHH_`, which readers of workbooks turn back.
 */
function xml(text: string): string {
  return text
    .replace(/_(?=x[0-9a-f]{4}_)/gi, '_x005F_')
    .replace(
      /[\0-\x08\x0b-\x1f\ufffe\uffff]|[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g,
      (sign) => `_x${sign.charCodeAt(0).toString(16).toUpperCase().padStart(4, '0')}_`,
    )
    .replace(/[&<>"]/g, (sign) => entities[sign]!);
}

const longestName = 31;

/** Names that a sheet may bear: at most 31 characters, none of `[]:*?/\`, no quote at an end, each once. */
export function sheetNames(wanted: readonly string[]): string[] {
  const taken = new Set<string>();
  return wanted.map((name) => {
    const tidy =
      withoutEnd(
        name
          .replace(/[[\]:*?/\\\p{C}]/gu, ' ')
          .trim()
          .replace(/^[' ]+/, '')
          .slice(0, longestName),
        "' ",
      ) || 'Table';
    let given = tidy;
    for (let copy = 2; taken.has(given.toLowerCase()); copy += 1) {
      const tail = ` ${copy}`;
      given = tidy.slice(0, longestName - tail.length) + tail;
    }
    taken.add(given.toLowerCase());
    return given;
  });
}
