const needsQuotes = /["\t\r\n]/;
const quoted = (cell: string): string => `"${cell.replaceAll('"', '""')}"`;

/**
 * Cells as text to paste elsewhere: tabs between cells, line breaks between rows, and quotes as RFC 4180 has them for
 * commas round a cell that holds a tab, a line break or a quote. Every other cell is written unchanged, leading zeros
 * included. An empty last row is written `""`, as most programs ignore a line break at the end.
 */
export function toTabText(rows: readonly (readonly string[])[]): string {
  return rows
    .map((row, index) => {
      if (index > 0 && index === rows.length - 1 && row.length === 1 && row[0] === '') return '""';
      return row.map((cell) => (needsQuotes.test(cell) ? quoted(cell) : cell)).join('\t');
    })
    .join('\r\n');
}

/**
 * Parses tab-separated text to rows of equal length. A cell with an opening but no closing quote is taken literally;
 * one line break at the end is not a row.
 */
export function fromTabText(text: string): string[][] {
  const rows: string[][] = [];
  let row: string[] = [];
  let at = 0;
  for (;;) {
    const cell = quotedCell(text, at) ?? plainCell(text, at);
    row.push(cell.text);
    at = cell.end;
    if (text[at] === '\t') {
      at += 1;
      continue;
    }
    rows.push(row);
    row = [];
    if (text[at] === '\r' && text[at + 1] === '\n') at += 1;
    at += 1;
    if (at >= text.length) break;
  }
  const width = rows.reduce((most, item) => Math.max(most, item.length), 0);
  for (const item of rows) while (item.length < width) item.push('');
  return rows;
}

interface Piece {
  readonly text: string;
  /** Index of the next tab or line break, or the end of the text. */
  readonly end: number;
}

function plainCell(text: string, from: number): Piece {
  let end = from;
  while (end < text.length && !'\t\r\n'.includes(text[end]!)) end += 1;
  return { text: text.slice(from, end), end };
}

function quotedCell(text: string, from: number): Piece | undefined {
  if (text[from] !== '"') return undefined;
  let close = text.indexOf('"', from + 1);
  while (close !== -1 && text[close + 1] === '"') close = text.indexOf('"', close + 2);
  if (close === -1) return undefined;
  const end = close + 1;
  if (end < text.length && !'\t\r\n'.includes(text[end]!)) return undefined;
  return { text: text.slice(from + 1, close).replaceAll('""', '"'), end };
}

const entities: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  '\n': '<br>',
};

/** Cells as an HTML table, for programs that paste formatted text. */
export function toTableMarkup(rows: readonly (readonly string[])[]): string {
  const cell = (text: string): string =>
    `<td>${text.replaceAll('\r\n', '\n').replaceAll(/[&<>"\n]/g, (item) => entities[item]!)}</td>`;
  return `<table>${rows.map((row) => `<tr>${row.map(cell).join('')}</tr>`).join('')}</table>`;
}

/** Whether a pasted row repeats the headings: every filled cell equals the heading of its column. */
export function looksLikeHeadings(row: readonly string[], headings: readonly string[]): boolean {
  const same = (a: string, b: string | undefined): boolean =>
    a.trim().toLowerCase() === b?.trim().toLowerCase();
  const filled = row.flatMap((cell, index) => (cell.trim() === '' ? [] : [{ cell, index }]));
  return (
    filled.length > 0 &&
    (filled.every(({ cell, index }) => same(cell, headings[index])) ||
      (filled.length > 1 &&
        filled.every(({ cell }) => headings.some((heading) => same(cell, heading)))))
  );
}
