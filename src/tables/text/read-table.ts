import Papa, { type ParseConfig, type ParseResult } from 'papaparse';
import type { Fault } from '../../model/index.js';
import { detectDelimiter } from './delimiter.js';
import { unguarded } from '../write/guard.js';
import { faultAt } from './place.js';
import { nextBrokenQuote, unifyLineEnds, type BrokenQuote } from './quotes.js';
import { surveyOf, type Survey } from './survey.js';
import { lostLetter, tableOfRecords, type RecordFault, type Records } from './records.js';
import type { Table, TableRow } from './table.js';
import { problemOf } from '../parse/parsed.js';

export interface ReadOptions {
  /** Default: a `sep=` line where there is one, else the delimiter that fits best. */
  readonly delimiter?: string;
  /** The line that holds the headings. Default: the first that is not blank. */
  readonly headingLine?: number;
  /** Whether a leading ' that `writeCsv` put on is taken off. Default: yes. */
  readonly guard?: boolean;
}

interface Tokens {
  readonly rows: TableRow[];
  readonly faults: RecordFault[];
}

/** Splits text into records. Never throws: what is wrong with the text's shape comes back as faults. */
export function readRecords(text: string, options: ReadOptions = {}): Records {
  const whole = text.startsWith('\uFEFF') ? text.slice(1) : text;
  const said = /^sep=([^\r\n"])(?:\r\n|\r|\n|$)/i.exec(whole);
  const body = said ? whole.slice(said[0].length) : whole;
  const delimiter = options.delimiter ?? said?.[1] ?? detectDelimiter(body);
  const { rows, faults } = tokenise(body, delimiter, said ? 2 : 1);
  const guarded = options.guard !== false && body.includes("'");
  const legible = !body.includes(lostLetter);
  return { delimiter, rows: guarded ? rows.map(unguardedRow) : rows, faults, legible };
}

/**
 * Splits text into headings and rows. Blank lines are left out; lines are counted as a text editor counts them. Never
 * throws: what is wrong with the text's shape comes back as faults, without a file name.
 */
export function readTable(text: string, options: ReadOptions = {}): Table {
  return tableOfRecords(readRecords(text, options), options.headingLine);
}

function unguardedRow(row: TableRow): TableRow {
  // Nearly every row has no guard at all and stays as it is.
  return row.cells.some((cell) => cell.includes("'"))
    ? { ...row, cells: row.cells.map(unguarded) }
    : row;
}

/**
 * Splits text into records. A record with a quote out of place would take the lines below it along: it is kept, told
 * of, and reading goes on with the next line.
 */
function tokenise(body: string, delimiter: string, firstLine: number): Tokens {
  const rows: TableRow[] = [];
  const faults: RecordFault[] = [];
  let at = 0;
  let line = firstLine;
  while (at < body.length) {
    const look = surveyOf(body, at, delimiter);
    const broken = look.broken ? nextBrokenQuote(body, at, delimiter) : undefined;
    const text = body.slice(at, broken?.recordStart);
    // The first look ends at the broken quote, whose record is not among these.
    line = recordsIn(text, broken ? surveyOf(text, 0, delimiter) : look, delimiter, line, rows);
    if (!broken) break;
    const { recordStart, quote, code } = broken;
    lineEnd.lastIndex = quote;
    const end = lineEnd.test(body) ? lineEnd.lastIndex : body.length;
    const raw = body.slice(recordStart, end);
    const quoteLine = line + lineBreaks(body.slice(recordStart, quote));
    faults.push({ record: rows.length, fault: quoteFault(code, quoteLine, raw) });
    rows.push({ cells: raw.replace(/(?:\r\n|\r|\n)$/, '').split(delimiter), line });
    line += lineBreaks(raw);
    at = end;
  }
  return { rows, faults };
}

const lineEnd = /\r\n|\r|\n/g;

/** Adds the records of text whose quotes are all in place, and gives the line after them. */
function recordsIn(
  given: string,
  look: Survey,
  delimiter: string,
  firstLine: number,
  rows: TableRow[],
): number {
  const { newline, hasQuotes, breaksInside } = look;
  // The parser knows of spaces after a closing quote only where a line end follows them.
  const text = hasQuotes && given.endsWith(' ') ? given + (newline ?? '\n') : given;
  // A record that is a line break only is a blank line; one that is two quotes is an empty cell. Where both may be
  // there, the parser's records do not tell them apart.
  if (newline === undefined || (hasQuotes && quotedBlank.test(text)))
    return readOneByOne(text, delimiter, firstLine, rows);
  const { data } = parse(text, { delimiter, newline });
  let line = firstLine;
  for (const cells of data) {
    if (cells.length > 1 || cells[0]!.trim() !== '') rows.push({ cells, line });
    line += 1;
    if (!breaksInside) continue;
    for (const cell of cells)
      if (cell.includes('\n') || cell.includes('\r')) line += lineBreaks(cell);
  }
  // What follows the last line end is a record to the parser, but no line where it is empty.
  return text.endsWith(newline) ? line - 1 : line;
}

/** The parser by itself: what else the library does, such as guessing line ends, is done here before, and a page loads less. */
function parse(
  text: string,
  config: ParseConfig<readonly string[][]>,
): ParseResult<readonly string[]> {
  return new Papa.Parser(config).parse(text, 0, false) as ParseResult<readonly string[]>;
}

const quotedBlank = /(?:^|[\r\n])"\s*" *(?=[\r\n]|$)/;

/** As `recordsIn`, whatever the line ends are, with the place of each record known. */
function readOneByOne(
  text: string,
  delimiter: string,
  firstLine: number,
  rows: TableRow[],
): number {
  const unified = unifyLineEnds(text, delimiter);
  let start = 0;
  let line = firstLine;
  parse(unified, {
    delimiter,
    newline: '\n',
    step: ({ data: [cells = []], meta }) => {
      const raw = unified.slice(start, meta.cursor);
      if (raw.trim() !== '' || cells.length > 1) rows.push({ cells, line });
      start = meta.cursor;
      line += lineBreaks(raw);
    },
  });
  return line;
}

function lineBreaks(text: string): number {
  return text.match(lineEnd)?.length ?? 0;
}

function quoteFault(code: BrokenQuote['code'], line: number, raw: string): Fault {
  const value = raw.trimEnd().slice(0, 200);
  const problem =
    code === 'quote-not-closed' ? problemOf('quote-not-closed') : problemOf('text-after-quote');
  return faultAt({ line }, 'error', problem, value);
}
