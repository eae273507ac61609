import Papa from 'papaparse';
import type { Fault } from '../model/index.js';
import { detectDelimiter } from './delimiter.js';
import { unguarded } from './guard.js';
import { faultAt } from './place.js';
import { nextBrokenQuote, unifyLineEnds, type BrokenQuote } from './quotes.js';
import { shapeFaults, type Table, type TableRow } from './table.js';

export interface ReadOptions {
  /** Default: a `sep=` line where there is one, else the delimiter that fits best. */
  readonly delimiter?: string;
  /** Whether a leading ' that `writeCsv` put on is taken off. Default: yes. */
  readonly guard?: boolean;
}

interface Tokens {
  readonly rows: TableRow[];
  readonly faults: Fault[];
}

/**
 * Splits text into headings and rows. Blank lines are left out; lines are counted as a text editor counts them. Never
 * throws: what is wrong with the text's shape comes back as faults, without a file name.
 */
export function readTable(text: string, options: ReadOptions = {}): Table {
  const whole = text.startsWith('\uFEFF') ? text.slice(1) : text;
  const said = /^sep=([^\r\n"])(?:\r\n|\r|\n|$)/i.exec(whole);
  const body = said ? whole.slice(said[0].length) : whole;
  const delimiter = options.delimiter ?? said?.[1] ?? detectDelimiter(body);
  const { rows, faults } = tokenise(body, delimiter, said ? 2 : 1);
  const strip = options.guard === false ? (cell: string): string => cell : unguarded;
  const [heading, ...data] = rows.map((row) => ({ ...row, cells: row.cells.map(strip) }));
  if (!heading)
    return { delimiter, columns: [], line: 1, rows: [], faults: [...faults, emptyFault] };
  const columns = heading.cells;
  const broken = new Set(faults.map((fault) => fault.row));
  const shape = shapeFaults(columns, data).filter((fault) => !broken.has(fault.row));
  return { delimiter, columns, line: heading.line, rows: data, faults: [...faults, ...shape] };
}

const emptyFault = faultAt({ line: 1 }, 'error', {
  code: 'file-empty',
  message: 'The file holds nothing.',
  mend: 'Give a file whose first line holds the column headings.',
});

/**
 * Splits text into records. A record with a quote out of place would take the lines below it along: it is kept, told
 * of, and reading goes on with the next line.
 */
function tokenise(body: string, delimiter: string, firstLine: number): Tokens {
  const rows: TableRow[] = [];
  const faults: Fault[] = [];
  let at = 0;
  let line = firstLine;
  while (at < body.length) {
    const broken = nextBrokenQuote(body, at, delimiter);
    line = readRecords(body.slice(at, broken?.recordStart), delimiter, line, rows);
    if (!broken) break;
    const { recordStart, quote, code } = broken;
    lineEnd.lastIndex = quote;
    const end = lineEnd.test(body) ? lineEnd.lastIndex : body.length;
    const raw = body.slice(recordStart, end);
    const place = { line: line + lineBreaks(body.slice(recordStart, quote)), row: rows.length - 1 };
    faults.push(quoteFault(code, place, raw));
    rows.push({ cells: raw.replace(/(?:\r\n|\r|\n)$/, '').split(delimiter), line });
    line += lineBreaks(raw);
    at = end;
  }
  return { rows, faults };
}

const lineEnd = /\r\n|\r|\n/g;

/** Adds the records of text whose quotes are all in place, and gives the line after them. */
function readRecords(text: string, delimiter: string, firstLine: number, rows: TableRow[]): number {
  const unified = unifyLineEnds(text, delimiter);
  let start = 0;
  let line = firstLine;
  Papa.parse<string[]>(unified, {
    delimiter,
    newline: '\n',
    header: false,
    skipEmptyLines: false,
    step: ({ data, meta }) => {
      const raw = unified.slice(start, meta.cursor);
      // A record that is a line break only is a blank line; one that is two quotes is an empty cell.
      if (raw.trim() !== '' || data.length > 1) rows.push({ cells: data, line });
      start = meta.cursor;
      line += lineBreaks(raw);
    },
  });
  return line;
}

function lineBreaks(text: string): number {
  return text.match(lineEnd)?.length ?? 0;
}

function quoteFault(
  code: BrokenQuote['code'],
  at: { line: number; row: number },
  raw: string,
): Fault {
  const place = at.row < 0 ? { line: at.line } : at;
  const value = raw.trimEnd().slice(0, 200);
  const problem =
    code === 'quote-not-closed'
      ? {
          code: 'quote-not-closed',
          message: 'A double quote that opens a cell is never closed, so this line was not read.',
          mend: 'Close the quote at the end of its cell, or take it out.',
        }
      : {
          code: 'text-after-quote',
          message: 'Text stands between the closing double quote of a cell and the next delimiter.',
          mend: 'Put the whole cell in quotes, and write a quote inside it twice.',
        };
  return faultAt(place, 'error', problem, value);
}
