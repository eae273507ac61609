import type { Problem, TableKind, TableText } from '../model/index.js';
import {
  entryOf,
  exampleCells,
  fieldsSuggested,
  headingsOf,
  matchColumns,
  tableOf,
  unreadDangers,
} from '../tables/index.js';

/** A heading for which a table is not used until somebody says what it holds. */
export interface HeadingAsk {
  /** As the file has it; `column 3` where it is blank. */
  readonly heading: string;
  /** What is wrong. */
  readonly problem: Problem;
  /** What `withHeading` calls it. */
  readonly entry: string;
  /** What it may hold, the likeliest first. */
  readonly likely: readonly string[];
  /** Every field that no column holds yet. */
  readonly free: readonly string[];
}

/** Asked again at every drawing; a table is never changed in place, and is of one kind. */
const known = new WeakMap<TableText, readonly HeadingAsk[]>();

/** The headings for which a table of a plan is refused. O(rows) only where there are any, and once a table. */
export function headingAsks(text: TableText, kind: TableKind): readonly HeadingAsk[] {
  const held = known.get(text);
  if (held) return held;
  const asks = asksOf(text, kind);
  known.set(text, asks);
  return asks;
}

function asksOf(text: TableText, kind: TableKind): readonly HeadingAsk[] {
  const table = tableOf(text);
  const match = matchColumns(table.columns, kind, text.map);
  const taken = new Set<string>(match.fields.keys());
  const free = (headingsOf(kind) as readonly string[]).filter((field) => !taken.has(field));
  return unreadDangers(table, kind, match, text).map(({ at, meant, problem }) => {
    const heading = table.columns[at]!.trim();
    const suggested: readonly string[] = fieldsSuggested(
      heading,
      kind,
      exampleCells(table.rows, at, 40),
    );
    const likely = [...new Set([...(meant === undefined ? [] : [meant]), ...suggested])];
    return {
      heading: heading === '' ? `column ${at + 1}` : heading,
      problem,
      entry: entryOf(table.columns, at),
      likely: likely.filter((field) => free.includes(field) || field === meant),
      free,
    };
  });
}

/** The table with a heading read as a field; an empty field: it stays unread. Cells and headings stay as they were typed. */
export function withHeading(text: TableText, entry: string, field: string): TableText {
  const others = Object.entries(text.map ?? {}).filter(
    ([name, column]) => name !== field && column !== entry,
  );
  const unread = (text.unread ?? []).filter((item) => item !== entry);
  return {
    ...text,
    map: Object.fromEntries(field === '' ? others : [...others, [field, entry]]),
    unread: field === '' ? [...unread, entry] : unread,
  };
}
