import Papa from 'papaparse';
import type { Fault } from '../model/index.js';
import { detectDelimiter } from './delimiter.js';
import { unguarded } from './guard.js';
import { faultAt } from './place.js';
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

/** A file in which this many lines have a quote out of place is not a table; the rest of it is left unread. */
const mostBroken = 100;

/**
 * Splits text into records. A record with a quote out of place would take the lines below it along: it is kept, told
 * of, and reading goes on with the next line.
 */
function tokenise(body: string, delimiter: string, firstLine: number): Tokens {
  const rows: TableRow[] = [];
  const faults: Fault[] = [];
  let rest = body;
  let line = firstLine;
  for (let count = 0; rest !== ''; count += 1) {
    const text = unifyLineEnds(rest, delimiter);
    const broken = readRecords(text, delimiter, line, rows);
    if (!broken) break;
    const row = rows.length - 1;
    // Below an open quote line ends are still the file's own.
    const lineEnd = /\r\n|\r|\n/.exec(text.slice(broken.quote));
    const last = count >= mostBroken || !lineEnd;
    const end = last ? text.length : broken.quote + lineEnd.index + lineEnd[0].length;
    const raw = text.slice(broken.start, end);
    const at = broken.line + lineBreaks(text.slice(broken.start, broken.quote));
    faults.push(quoteFault(broken.code, { line: at, row }, raw));
    rows.push({ cells: raw.replace(/[\r\n]+$/, '').split(delimiter), line: broken.line });
    rest = text.slice(end);
    line = broken.line + lineBreaks(raw);
  }
  return { rows, faults };
}

interface BrokenRecord {
  readonly code: string;
  /** Where in the text the record begins, and the cell with the quote. */
  readonly start: number;
  readonly quote: number;
  readonly line: number;
}

/** Adds the records to `rows` up to the first with a quote out of place. */
function readRecords(
  text: string,
  delimiter: string,
  firstLine: number,
  rows: TableRow[],
): BrokenRecord | undefined {
  let broken: BrokenRecord | undefined;
  let start = 0;
  let line = firstLine;
  Papa.parse<string[]>(text, {
    delimiter,
    newline: '\n',
    header: false,
    skipEmptyLines: false,
    step: ({ data, errors, meta }, parser) => {
      const [error] = errors;
      if (error) {
        broken = { code: error.code, start, quote: error.index ?? start, line };
        parser.abort();
        return;
      }
      const raw = text.slice(start, meta.cursor);
      // A record that is a line break only is a blank line; one that is two quotes is an empty cell.
      if (raw.trim() !== '' || data.length > 1) rows.push({ cells: data, line });
      start = meta.cursor;
      line += lineBreaks(raw);
    },
  });
  return broken;
}

function lineBreaks(text: string): number {
  return text.match(/\r\n|\r|\n/g)?.length ?? 0;
}

function quoteFault(code: string, at: { line: number; row: number }, raw: string): Fault {
  const place = at.row < 0 ? { line: at.line } : at;
  const value = raw.trimEnd().slice(0, 200);
  const problem =
    code === 'MissingQuotes'
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

/**
 * The text with `\n` for every line end outside quotes, so that a file with mixed line ends splits. Breaks inside
 * quoted cells stay as they are.
 */
function unifyLineEnds(text: string, delimiter: string): string {
  if (!text.includes('\r')) return text;
  const parts: string[] = [];
  let kept = 0;
  let quoted = false;
  let cellStart = true;
  for (let at = 0; at < text.length; at += 1) {
    const sign = text[at]!;
    if (quoted) {
      if (sign !== '"') continue;
      if (text[at + 1] === '"') at += 1;
      else quoted = false;
    } else if (sign === '\r') {
      parts.push(text.slice(kept, at), '\n');
      if (text[at + 1] === '\n') at += 1;
      kept = at + 1;
      cellStart = true;
    } else {
      if (sign === '"' && cellStart) quoted = true;
      cellStart = sign === '\n' || sign === delimiter;
    }
  }
  parts.push(text.slice(kept));
  return parts.join('');
}
