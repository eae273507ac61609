import { tableKinds, type TableKind } from '../../model/index.js';
import {
  headingsOf,
  needed,
  neededOneOf,
  synonymsOf,
  type FieldOf,
  type SheetKind,
} from './fields.js';
import { decidesDanger } from './danger-fields.js';
import { fieldMeant } from './heading-meaning.js';
import { endInLength, withoutUnit } from './heading-units.js';
import { wordsOf } from './heading-words.js';

/** Field to column heading, or `column 3`, as a person chose it; an empty text: no column holds the field. */
export type ColumnMap = Readonly<Record<string, string>>;

export interface ColumnMatch<K extends SheetKind> {
  /** Field to column index. */
  readonly fields: ReadonlyMap<FieldOf<K>, number>;
  /** Indexes of the columns nobody asked for; they are kept as text. */
  readonly unmatched: readonly number[];
  /** Fields for which several columns answer equally well: none of those is used. */
  readonly doubled: readonly { readonly field: FieldOf<K>; readonly columns: readonly number[] }[];
  /** Entries of the manual map that name no column or no field of ours. */
  readonly mapFaults: readonly { readonly field: string; readonly heading: string }[];
  /** The columns the table cannot do without and does not have. */
  readonly missing: readonly FieldOf<K>[];
}

/**
 * Finds which column holds which field: first the manual map, then our own headings, then the synonyms, then what the
 * words mean in any order. Case, spacing, punctuation and a unit at the end (`duration (min)`) do not matter. By
 * meaning a column is taken only where no other answers as well, and never for a field that decides who is in danger.
 */
export function matchColumns<K extends SheetKind>(
  columns: readonly string[],
  kind: K,
  map: ColumnMap = {},
): ColumnMatch<K> {
  const names = columns.map((column) => nameOf(column, kind));
  const known = headingsOf(kind);
  const found = new Map<FieldOf<K>, number>();
  const doubled: { field: FieldOf<K>; columns: number[] }[] = [];
  const mapFaults: { field: string; heading: string }[] = [];
  const taken = new Set<number>();
  const take = (field: FieldOf<K>, indexes: number[]): void => {
    if (indexes.length === 1) found.set(field, indexes[0]!);
    else doubled.push({ field, columns: indexes });
    for (const index of indexes) taken.add(index);
  };
  const refused = new Set<FieldOf<K>>();
  const there = (field: FieldOf<K>): boolean =>
    found.has(field) || doubled.some((item) => item.field === field);

  for (const [wanted, heading] of Object.entries(map)) {
    const field = known.find((item) => item === wanted);
    const named = columnsNamed(columns, heading);
    if (field && heading === '') refused.add(field);
    else if (field && named.length > 0) take(field, named);
    else mapFaults.push({ field: wanted, heading });
  }
  for (const synonyms of [false, true]) {
    for (const field of known) {
      if (refused.has(field) || there(field)) continue;
      const answers = synonyms ? keysOf(kind, field) : new Set([headingKey(field)]);
      const indexes = indexesWhere(
        names,
        ({ key, suits }, index) => answers.has(key) && suits(field) && !taken.has(index),
      );
      if (indexes.length > 0) take(field, indexes);
    }
  }
  const meant = new Map<FieldOf<K>, number[]>();
  columns.forEach((column, index) => {
    if (taken.has(index)) return;
    const field = fieldMeant(column, kind);
    if (field === undefined || refused.has(field) || there(field)) return;
    if (decidesDanger(kind, field)) return;
    meant.set(field, [...(meant.get(field) ?? []), index]);
  });
  for (const [field, indexes] of meant) if (indexes.length === 1) take(field, indexes);
  return {
    fields: found,
    unmatched: indexesWhere(columns, (_, index) => !taken.has(index)),
    doubled,
    mapFaults,
    missing: [
      ...needed[kind].filter((field: FieldOf<K>) => !there(field)),
      ...missingOf(neededOneOf[kind] ?? [], there),
    ],
  };
}

/** The headings of the columns that nothing is read from, in their order. */
export function unreadHeadings(
  columns: readonly string[],
  kind: SheetKind,
  map?: ColumnMap,
): readonly string[] {
  return matchColumns(columns, kind, map).unmatched.map((at) => columns[at]!);
}

/** The columns a person means by a heading, or by `column 3` where there is no such heading. */
function columnsNamed(columns: readonly string[], heading: string): number[] {
  const exact = indexesWhere(columns, (column) => column.trim() === heading.trim());
  if (exact.length > 0) return exact;
  const place = Number(/^column (\d{1,5})$/.exec(heading)?.[1] ?? 0);
  return place >= 1 && place <= columns.length ? [place - 1] : [];
}

/** The entry of a `ColumnMap` that means one column: its heading, or its place where the heading is blank or not alone. */
export function entryOf(columns: readonly string[], index: number): string {
  const heading = columns[index]!.trim();
  return heading !== '' && columnsNamed(columns, heading).length === 1
    ? heading
    : `column ${index + 1}`;
}

/** The first of several fields where none is there. */
function missingOf<F>(either: readonly F[], there: (field: F) => boolean): readonly F[] {
  return either.some(there) ? [] : either.slice(0, 1);
}

/** The kind of table these headings are of; `undefined` when none has all the columns it cannot do without. */
export function guessKind(columns: readonly string[]): TableKind | undefined {
  let best: { kind: TableKind; score: number } | undefined;
  for (const kind of tableKinds) {
    const match = matchColumns(columns, kind);
    if (match.missing.length > 0) continue;
    const own = headingsOf(kind).filter((field) =>
      columns.some((column) => headingKey(column) === field),
    ).length;
    const score = match.fields.size + own;
    if (!best || score > best.score) best = { kind, score };
  }
  return best?.kind;
}

/** The kind that most of these headings are read as, though it may lack a column it needs; at least two are read. */
export function likelyKind(columns: readonly string[]): TableKind | undefined {
  let best: { kind: TableKind; read: number } | undefined;
  for (const kind of tableKinds) {
    const read = matchColumns(columns, kind).fields.size;
    if (read >= 2 && (!best || read > best.read)) best = { kind, read };
  }
  return best?.kind;
}

/** A heading with what does not matter taken off. */
function headingKey(heading: string): string {
  const all = wordsOf(heading);
  return (keepsUnit.has(all.join(' ')) ? all : withoutUnit(all)).join(' ');
}

/** What a heading is matched by, and whether a unit of length at its end goes with a field. */
function nameOf<K extends SheetKind>(
  heading: string,
  kind: K,
): { readonly key: string; readonly suits: (field: FieldOf<K>) => boolean } {
  const key = headingKey(heading);
  const isPlace = (kind === 'windows' || kind === 'work') && endsInLength(heading, key);
  return { key, suits: (field) => !isPlace || field === 'from' || field === 'to' };
}

const endsInLength = (heading: string, key: string): boolean => {
  const words = wordsOf(heading);
  return words.join(' ') !== key && endInLength(words);
};

/** Headings whose last word is part of the name. */
const keepsUnit = new Set(
  tableKinds.flatMap((kind) =>
    headingsOf(kind).flatMap((field) => [field, ...synonymsOf(kind, field)]),
  ),
);

const keys = new Map<string, ReadonlySet<string>>();

function keysOf<K extends SheetKind>(kind: K, field: FieldOf<K>): ReadonlySet<string> {
  const name = `${kind} ${field}`;
  let known = keys.get(name);
  if (!known) keys.set(name, (known = new Set(synonymsOf(kind, field).map(headingKey))));
  return known;
}

function indexesWhere<T>(list: readonly T[], test: (item: T, index: number) => boolean): number[] {
  return list.flatMap((item, index) => (test(item, index) ? [index] : []));
}
