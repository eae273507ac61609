// A walk over CSV text that knows where quotes open and close: a quote opens a cell only at the cell's first character.
import { closingQuote, pastSpaces } from './survey.js';

/** A quote that would make a record run on into the lines below it. */
export interface BrokenQuote {
  readonly code: 'quote-not-closed' | 'text-after-quote';
  readonly recordStart: number;
  /** The quote that opens the cell. */
  readonly quote: number;
}

/** The first quote at or after `from`, which begins a record, that is never closed or closed in the middle of a cell. */
export function nextBrokenQuote(
  text: string,
  from: number,
  delimiter: string,
): BrokenQuote | undefined {
  let recordStart = from;
  let cellStart = true;
  for (let at = from; at < text.length; at += 1) {
    const sign = text[at]!;
    if (sign === '"' && cellStart) {
      const close = closingQuote(text, at);
      if (close < 0) return { code: 'quote-not-closed', recordStart, quote: at };
      const after = pastSpaces(text, close + 1, delimiter);
      const next = text[after];
      if (next !== undefined && next !== delimiter && next !== '\n' && next !== '\r') {
        return { code: 'text-after-quote', recordStart, quote: at };
      }
      at = after - 1;
      cellStart = false;
    } else {
      const ends = sign === '\n' || sign === '\r';
      if (ends) recordStart = at + 1;
      cellStart = ends || sign === delimiter;
    }
  }
  return undefined;
}

/**
 * The text with `\n` for every line end outside quotes, so that a file with mixed line ends splits. Breaks inside
 * quoted cells stay as they are. Its quotes are all in place.
 */
export function unifyLineEnds(text: string, delimiter: string): string {
  if (!text.includes('\r')) return text;
  const parts: string[] = [];
  let kept = 0;
  let cellStart = true;
  for (let at = 0; at < text.length; at += 1) {
    const sign = text[at]!;
    if (sign === '"' && cellStart) {
      at = closingQuote(text, at);
      cellStart = false;
    } else if (sign === '\r') {
      parts.push(text.slice(kept, at), '\n');
      if (text[at + 1] === '\n') at += 1;
      kept = at + 1;
      cellStart = true;
    } else {
      cellStart = sign === '\n' || sign === delimiter;
    }
  }
  parts.push(text.slice(kept));
  return parts.join('');
}
