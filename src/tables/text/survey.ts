// A first look over CSV text, by jumps from quote to quote, which says whether the plain way of reading it is safe.

/** What a stretch of CSV text is like, up to the first quote out of place. */
export interface Survey {
  /** Whether a quote that opens a cell is never closed, or closed in the middle of a cell. */
  readonly broken: boolean;
  /** The line end of the records, where every line end outside quotes is the same; else undefined. */
  readonly newline: '\n' | '\r\n' | '\r' | undefined;
  readonly hasQuotes: boolean;
  /** Whether a quoted cell holds a line break. */
  readonly breaksInside: boolean;
}

// Line ends that are not the one named.
const others = { '\n': /\r/g, '\r\n': /\r(?!\n)|(?<!\r)\n/g, '\r': /\n/g } as const;

/** Looks over the text from `from`, which begins a record. Time grows with the length, whatever the text holds. */
export function surveyOf(text: string, from: number, delimiter: string): Survey {
  const newline = firstLineEnd(text, from, delimiter);
  const other = others[newline];
  other.lastIndex = from;
  let odd = other.exec(text)?.index ?? Infinity;
  let uniform = true;
  let hasQuotes = false;
  let breaksInside = false;
  let at = text.indexOf('"', from);
  for (; at >= 0;) {
    if (!opensCell(text, at, from, delimiter)) {
      at = text.indexOf('"', at + 1);
      continue;
    }
    hasQuotes = true;
    const close = closingQuote(text, at);
    if (close < 0 || !cellEndsAfter(text, close + 1, delimiter))
      return { broken: true, newline: undefined, hasQuotes, breaksInside };
    if (odd < at) uniform = false;
    breaksInside ||= hasBreak(text, at, close);
    if (odd < close) {
      other.lastIndex = close;
      odd = other.exec(text)?.index ?? Infinity;
    }
    at = text.indexOf('"', close + 1);
  }
  if (odd < Infinity) uniform = false;
  return { broken: false, newline: uniform ? newline : undefined, hasQuotes, breaksInside };
}

function firstLineEnd(text: string, from: number, delimiter: string): '\n' | '\r\n' | '\r' {
  for (let at = from; at < text.length; at += 1) {
    const sign = text[at];
    if (sign === '"' && opensCell(text, at, from, delimiter)) {
      const close = closingQuote(text, at);
      if (close < 0) return '\n';
      at = close;
    } else if (sign === '\n') return '\n';
    else if (sign === '\r') return text[at + 1] === '\n' ? '\r\n' : '\r';
  }
  return '\n';
}

function opensCell(text: string, at: number, from: number, delimiter: string): boolean {
  const before = text[at - 1];
  return at === from || before === delimiter || before === '\n' || before === '\r';
}

function hasBreak(text: string, open: number, close: number): boolean {
  for (let at = open + 1; at < close; at += 1) {
    const code = text.charCodeAt(at);
    if (code === 10 || code === 13) return true;
  }
  return false;
}

/** The quote that closes the one at `open`; -1 when none does. */
export function closingQuote(text: string, open: number): number {
  let at = text.indexOf('"', open + 1);
  while (at >= 0 && text[at + 1] === '"') at = text.indexOf('"', at + 2);
  return at;
}

/** Whether a cell ends at `from`, spaces aside, which may stand between a closing quote and the delimiter. */
function cellEndsAfter(text: string, from: number, delimiter: string): boolean {
  const next = text[pastSpaces(text, from, delimiter)];
  return next === undefined || next === delimiter || next === '\n' || next === '\r';
}

/** Where the spaces from `from` on end. */
export function pastSpaces(text: string, from: number, delimiter: string): number {
  let at = from;
  while (text[at] === ' ' && delimiter !== ' ') at += 1;
  return at;
}
