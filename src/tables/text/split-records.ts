// Splits CSV text as RFC 4180 has it: a quote opens a cell only as its first character, and `""` in it stands for one.
import type { TableRow } from './table.js';

/** A quote that is never closed, or closed in the middle of a cell. */
export interface BrokenQuote {
  readonly code: 'quote-not-closed' | 'text-after-quote';
  /** Index of its record. */
  readonly record: number;
  /** The line that the quote stands on. */
  readonly line: number;
  /** The record as written, up to the end of that line. */
  readonly raw: string;
}

/**
 * Splits text into records at line ends of any kind, and these into cells; blank lines are left out. A record with a quote
 * out of place would take the lines below it along: it ends with its line and is split whatever is quoted. Time grows
 * with the length, whatever the text holds.
 *
 * @param firstLine The line that the text begins on, as a text editor counts them.
 */
export function splitRecords(
  text: string,
  delimiter: string,
  firstLine: number,
): { readonly rows: readonly TableRow[]; readonly broken: readonly BrokenQuote[] } {
  const rows: TableRow[] = [];
  const broken: BrokenQuote[] = [];
  const nextQuote = finder(text, '"');
  const nextDelimiter = finder(text, delimiter);
  const nextFeed = finder(text, '\n');
  const nextReturn = finder(text, '\r');
  const lineEnd = (from: number): number => Math.min(nextFeed(from), nextReturn(from));

  /** Puts the cells of a record that holds a quote into `cells`: where it ends, or the quote that is out of place. */
  function quotedCells(
    start: number,
    cells: string[],
  ): { end: number } | { open: number; code: BrokenQuote['code'] } {
    for (let at = start; ; at += delimiter.length) {
      const open = at;
      if (text[open] === '"') {
        const close = closingQuote(text, open);
        if (close < 0) return { open, code: 'quote-not-closed' };
        cells.push(text.slice(open + 1, close).replaceAll('""', '"'));
        at = pastSpaces(text, close + 1, delimiter);
        if (endsRecord(text[at])) return { end: at };
        if (!text.startsWith(delimiter, at)) return { open, code: 'text-after-quote' };
      } else {
        const end = lineEnd(open);
        at = Math.min(nextDelimiter(open), end);
        cells.push(text.slice(open, at));
        if (at === end) return { end };
      }
    }
  }

  let line = firstLine;
  for (let start = 0; start < text.length;) {
    let end = lineEnd(start);
    if (nextQuote(start) >= end) {
      const cells = text.slice(start, end).split(delimiter);
      if (cells.length > 1 || cells[0]!.trim() !== '') rows.push({ cells, line });
    } else {
      let cells: string[] = [];
      const found = quotedCells(start, cells);
      if ('end' in found) end = found.end;
      else {
        const { open, code } = found;
        end = open;
        while (!endsRecord(text[end])) end += 1;
        const raw = text.slice(start, end);
        broken.push({
          code,
          record: rows.length,
          line: line + lineBreaks(text.slice(start, open)),
          raw,
        });
        cells = raw.split(delimiter);
      }
      rows.push({ cells, line });
      line += lineBreaks(text.slice(start, end));
    }
    line += 1;
    start = end + (text.startsWith('\r\n', end) ? 2 : 1);
  }
  return { rows, broken };
}

const endsRecord = (sign: string | undefined): boolean =>
  sign === undefined || sign === '\n' || sign === '\r';

/** Finds a sign at or after a place; the places that are asked for may not go back. The length where there is none. */
function finder(text: string, sign: string): (from: number) => number {
  let at = -1;
  return (from) => {
    if (at < from) {
      const found = text.indexOf(sign, from);
      at = found < 0 ? text.length : found;
    }
    return at;
  };
}

/** The quote that closes the one at `open`; -1 when none does. */
function closingQuote(text: string, open: number): number {
  let at = text.indexOf('"', open + 1);
  while (at >= 0 && text[at + 1] === '"') at = text.indexOf('"', at + 2);
  return at;
}

/** Where the spaces from `from` on end, which may stand between a closing quote and the delimiter. */
function pastSpaces(text: string, from: number, delimiter: string): number {
  let at = from;
  while (text[at] === ' ' && delimiter !== ' ') at += 1;
  return at;
}

const lineBreaks = (text: string): number => text.match(/\r\n|\r|\n/g)?.length ?? 0;
