// Lays out the text of an answer for a screen, wrapping what does not fit.
import type { Block, TableBlock, TermsBlock } from './blocks.js';
import { plainText } from './output.js';
import { padded, widthOf, wrapped } from './wrapped.js';

/** Columns between two cells. */
const GAP = 2;
/** Minimum width of a text column. */
const LEAST = 12;

/**
 * The width of a terminal: from `COLUMNS`, otherwise from the terminal; undefined without one, and then nothing is
 * wrapped.
 */
export function columnsOf(
  stream: { readonly isTTY?: boolean; readonly columns?: number },
  said: string | undefined,
): number | undefined {
  if (said !== undefined && /^[1-9]\d{0,3}$/.test(said)) return Math.max(20, Number(said));
  return stream.isTTY && stream.columns ? Math.max(20, stream.columns) : undefined;
}

/** Lays out text without terminal control characters and with no line wider than `width`. */
export function layOut(blocks: readonly Block[], width = Infinity): string {
  return blocks
    .flatMap((block) => {
      if (typeof block === 'string') return lineIn(block, width);
      return 'terms' in block ? termsIn(block, width) : tableIn(plainCells(block), width);
    })
    .join('\n');
}

function lineIn(text: string, width: number): string[] {
  return plainText(text)
    .split('\n')
    .flatMap((line) => wrapped(line, width, /^ */.exec(line)![0].length + GAP));
}

/** A cell is one line: its line breaks become spaces. */
const plain = (cell: string): string =>
  plainText(
    cell
      .split('\n')
      .map((line) => line.trim())
      .join(' '),
  );

const plainCells = ({ heads, rows }: TableBlock): TableBlock => ({
  heads: heads.map(plain),
  rows: rows.map((row) => row.map(plain)),
});

/** Descriptions beside their names, or below them on a narrow screen. */
function termsIn({ terms, indent = 0 }: TermsBlock, width: number): string[] {
  const entries = terms.map(([name, text]) => [plain(name), plain(text)] as const);
  const wide = indent + widest(entries.map(([name]) => name)) + GAP;
  const beside = wide + LEAST * 2 <= width;
  return entries.flatMap(([name, text]) => {
    const head = ' '.repeat(indent) + name;
    const lines = wrapped(text, beside ? width - wide : width - indent - GAP);
    const blanks = ' '.repeat(beside ? wide : indent + GAP);
    if (!beside) return [...wrapped(head, width, indent), ...lines.map((line) => blanks + line)];
    return lines.map((line, at) => ((at === 0 ? padded(head, wide) : blanks) + line).trimEnd());
  });
}

const widest = (texts: readonly string[]): number =>
  texts.reduce((most, text) => Math.max(most, widthOf(text)), 0);

interface Column {
  readonly numeric: boolean;
  /** Width of its widest cell. */
  readonly natural: number;
  /** Minimum readable width. */
  readonly least: number;
}

function columnsIn({ heads, rows }: TableBlock): Column[] {
  return heads.map((head, at) => {
    const cells = rows.map((row) => row[at] ?? '');
    const natural = widest([head, ...cells]);
    const numeric = rows.length > 0 && cells.every((cell) => /^[-+]?[\d ]|^$|^–$/.test(cell));
    const word = widest([head, ...cells].flatMap((text) => text.split(' ')));
    return {
      numeric,
      natural,
      least: numeric || at === 0 ? natural : Math.min(natural, Math.max(LEAST, word)),
    };
  });
}

const sum = (of: readonly number[]): number => of.reduce((all, value) => all + value, 0);

/**
 * Columns at full width if they fit; otherwise the widest are narrowed and their cells wrapped; if still too wide, each
 * row becomes a few lines. No column is left out.
 */
function tableIn(block: TableBlock, width: number): string[] {
  const columns = columnsIn(block);
  const gaps = GAP * (columns.length - 1);
  if (sum(columns.map((column) => column.least)) + gaps > width) return inRows(block, width);
  return inColumns(block, columns, narrowed(columns, width - gaps));
}

/** Narrows columns to a total of at most `room`, the widest first. */
function narrowed(columns: readonly Column[], room: number): number[] {
  const widths = columns.map((column) => column.natural);
  while (sum(widths) > room) {
    const spare = widths.map((width, at) => (width > columns[at]!.least ? width : 0));
    const widest = spare.indexOf(Math.max(...spare));
    const next = Math.max(
      columns[widest]!.least,
      ...spare.filter((value) => value < spare[widest]!),
      widths[widest]! - (sum(widths) - room),
    );
    widths[widest] = Math.min(next, widths[widest]! - 1);
  }
  return widths;
}

function inColumns(
  { heads, rows }: TableBlock,
  columns: readonly Column[],
  widths: readonly number[],
): string[] {
  const lines = (cells: readonly string[]): string[] => {
    const parts = widths.map((width, at) => wrapped(cells[at] ?? '', width));
    const most = Math.max(...parts.map((part) => part.length));
    return Array.from({ length: most }, (_, line) =>
      parts
        .map((part, at) =>
          padded(part[line] ?? '', widths[at]!, columns[at]!.numeric ? 'right' : 'left'),
        )
        .join(' '.repeat(GAP))
        .trimEnd(),
    );
  };
  return [
    ...lines(heads),
    lines(widths.map((width) => '-'.repeat(width)))[0]!,
    ...rows.flatMap(lines),
  ];
}

/** Each row on its own lines: its name, then its other non-empty cells with their heads. */
function inRows({ heads, rows }: TableBlock, width: number): string[] {
  return rows.flatMap(([name = '', ...cells]) => {
    const told = cells.flatMap((cell, at) => {
      const head = heads[at + 1] ?? '';
      return cell === '' ? [] : [head === '' ? cell : `${head} ${cell}`];
    });
    return [
      ...wrapped(name === '' ? '–' : name, width, GAP),
      ...(told.length === 0 ? [] : wrapped(`  ${told.join('; ')}`, width, GAP)),
    ];
  });
}
