import type { Problem } from '../../model/index.js';
import {
  decodeAs,
  decodeBytes,
  delimiters,
  findHeadings,
  looksLikeArchive,
  readRecords,
  tooManyBytes,
  tooManyCells,
  type Encoding,
  type Records,
  type WorkbookSheet,
} from '../../tables/index.js';
import type { ImportChoices, ImportPreview } from './types.js';
import { problemOf } from '../../tables/parse/parsed.js';
import type { OtherFile } from '../../tables/problems/file-problems.js';

type SourceFacts = Pick<ImportPreview, 'encodings' | 'delimiters' | 'sheets'>;

/** The content of a file: text that may be JSON, the lines of a table, or why neither. */
export type SourceOf =
  | { readonly is: 'text'; readonly text: string; readonly encoding: Encoding }
  | {
      readonly is: 'records';
      readonly records: Records;
      readonly encoding: Encoding | null;
      readonly sheet: string | null;
      readonly facts: SourceFacts;
    }
  | { readonly is: 'unread'; readonly encoding: string; readonly fault: Problem };

const otherFiles: readonly (readonly [start: readonly number[], what: OtherFile])[] = [
  [[0x25, 0x50, 0x44, 0x46], 'pdf'],
  [[0x89, 0x50, 0x4e, 0x47], 'picture'],
  [[0xff, 0xd8, 0xff], 'picture'],
  [[0xd0, 0xcf, 0x11, 0xe0], 'old-or-locked'],
  [[0x1f, 0x8b], 'packed'],
];

/** Tells a file by what is in it, whatever it is called. */
export async function sourceOf(bytes: Uint8Array, choices?: ImportChoices): Promise<SourceOf> {
  const large = tooManyBytes(bytes.length);
  if (large) return unread('', large);
  const other = otherFiles.find(([start]) => start.every((byte, at) => bytes[at] === byte));
  if (other) {
    return unread('', problemOf('file-not-a-table', { what: other[1] }));
  }
  if (looksLikeArchive(bytes)) return workbook(bytes, choices);
  const { text, encoding } = choices?.encoding
    ? decodeAs(bytes, choices.encoding)
    : decodeBytes(bytes);
  if (text.trim() === '') {
    return unread(encoding, problemOf('file-empty/file'));
  }
  if (/^\s*[{[]/.test(text) && choices?.kind === undefined) return { is: 'text', text, encoding };
  const records = readRecords(text, choices?.delimiter ? { delimiter: choices.delimiter } : {});
  const wide = tooManyCells(records.rows);
  if (wide) return unread(encoding, wide);
  const told: SourceFacts = {
    encodings: choices ? encodingsOf(bytes, text) : [],
    delimiters: choices ? delimitersOf(text) : [],
    sheets: [],
  };
  return { is: 'records', records, encoding, sheet: null, facts: told };
}

const unread = (encoding: string, fault: Problem): SourceOf => ({ is: 'unread', encoding, fault });

async function workbook(bytes: Uint8Array, choices?: ImportChoices): Promise<SourceOf> {
  const { readWorkbook } = await import('../../tables/workbook/read-workbook.js');
  const { sheets, faults } = await readWorkbook(bytes);
  const sheet = sheets.find((item) => item.name === choices?.sheet) ?? firstTable(sheets);
  if (!sheet) {
    return unread('', faults[0] ?? problemOf('file-empty/workbook'));
  }
  const wide = tooManyCells(sheet.rows);
  if (wide) return unread('', wide);
  const told: SourceFacts = {
    encodings: [],
    delimiters: [],
    sheets: sheets.map(({ name, hidden, rows }) => ({ name, hidden, rows: rows.length })),
  };
  return { is: 'records', records: sheet, encoding: null, sheet: sheet.name, facts: told };
}

/** The first sheet in sight whose headings are known, else the first that holds anything. */
function firstTable(sheets: readonly WorkbookSheet[]): WorkbookSheet | undefined {
  const filled = sheets.filter((sheet) => sheet.rows.length > 0);
  return (
    filled.find((sheet) => !sheet.hidden && headingAt(sheet) !== undefined) ??
    filled.find((sheet) => !sheet.hidden) ??
    filled[0]
  );
}

/** The line of the headings: that on which most columns of a table known here are headed. */
export function headingAt(records: Records): number | undefined {
  return findHeadings(records)?.line;
}

const otherEncodings = ['utf-8', 'windows-1252', 'utf-16le', 'utf-16be'] as const;
const sampleBytes = 2_000_000;

function encodingsOf(bytes: Uint8Array, text: string): ImportPreview['encodings'] {
  const sample = bytes.subarray(0, sampleBytes);
  const lines = text.slice(0, sampleBytes).split('\n');
  return otherEncodings.map((encoding) => {
    const other = decodeAs(sample, encoding).text.split('\n');
    const count = Math.max(lines.length, other.length);
    let differ = 0;
    for (let at = 0; at < count; at += 1) if (lines[at] !== other[at]) differ += 1;
    return { encoding, lines: differ };
  });
}

function delimitersOf(text: string): ImportPreview['delimiters'] {
  const sample = text.slice(0, 200_000);
  return delimiters.map((delimiter) => {
    const { rows } = readRecords(sample, { delimiter });
    const heading = rows.find((row) => row.cells.length > 1) ?? rows[0];
    const columns = heading?.cells.length ?? 0;
    const even = rows.filter((row) => row.cells.length === columns).length;
    return { delimiter, columns, lines: rows.length, even };
  });
}
