import fc from 'fast-check';
import type { Row } from '../../../src/edits/index.js';
import { emptyPlan, emptyTable, type PlanDocument } from '../../../src/model/index.js';

const kinds = ['windows', 'work', 'resources', 'trains'] as const;

/** A document whose windows hold the rows given: `rows('a b', 'c')` is two rows of two and one cells. */
export function withRows(...rows: string[]): PlanDocument {
  const plan = emptyPlan('Viaduct', 'Europe/London');
  const windows = {
    ...emptyTable('windows.csv'),
    columns: ['window', 'start'],
    rows: rows.map((row) => row.split(' ')),
  };
  return { ...plan, tables: { ...plan.tables, windows } };
}

/** One thing a person does to a document, sharing what it leaves alone. */
export type Deed = (document: PlanDocument) => PlanDocument;

const cell = fc.oneof(fc.constantFrom('', 'W1', '23:00', '0'), fc.string({ maxLength: 3 }));
const row = fc.array(cell, { maxLength: 4 });
const kind = fc.constantFrom(...kinds);
const share = fc.double({ min: 0, max: 1, maxExcluded: true, noNaN: true });

const onRows = (change: (rows: Row[]) => Row[]) => (table: (typeof kinds)[number]) => {
  const deed: Deed = (document) => {
    const rows = change([...document.tables[table].rows]) as string[][];
    return {
      ...document,
      tables: { ...document.tables, [table]: { ...document.tables[table], rows } },
    };
  };
  return deed;
};
const place = (at: number, rows: readonly Row[]): number => Math.floor(at * rows.length);

/** Every kind of edit: rows put in, taken out, retyped, moved, sorted, copied; headings, rules, name, tables. */
export const deed: fc.Arbitrary<Deed> = fc.oneof(
  fc
    .tuple(kind, share, fc.array(row, { minLength: 1, maxLength: 3 }))
    .map(([table, at, added]) =>
      onRows((rows) => rows.toSpliced(place(at, rows), 0, ...added))(table),
    ),
  fc
    .tuple(kind, share, row)
    .map(([table, at, typed]) =>
      onRows((rows) => rows.toSpliced(place(at, rows), 1, typed))(table),
    ),
  fc
    .tuple(kind, share, fc.nat(3))
    .map(([table, at, count]) => onRows((rows) => rows.toSpliced(place(at, rows), count))(table)),
  fc.tuple(kind, share, share).map(([table, from, to]) =>
    onRows((rows) => {
      const [moved] = rows.splice(place(from, rows), 1);
      return moved === undefined ? rows : rows.toSpliced(place(to, rows), 0, moved);
    })(table),
  ),
  kind.map((table) =>
    onRows((rows) => rows.toSorted((a, b) => a.join().localeCompare(b.join())))(table),
  ),
  kind.map((table) => onRows((rows) => [...rows, ...rows])(table)),
  kind.map((table) => onRows((rows) => rows.map((item) => [...item]))(table)),
  fc.tuple(kind, fc.array(cell, { maxLength: 3 })).map(([table, columns]): Deed => (document) => ({
    ...document,
    tables: { ...document.tables, [table]: { ...document.tables[table], columns } },
  })),
  fc.string({ maxLength: 4 }).map((name): Deed => (document) => ({ ...document, name })),
  fc.nat(90).map((minutes): Deed => (document) => ({
    ...document,
    rules: { ...document.rules, margin: { minutes } },
  })),
  fc.tuple(fc.boolean(), fc.array(row, { maxLength: 2 })).map(
    // A table and an entry that the model may come to hold one day.
    ([there, rows]): Deed =>
      (document) => {
        const tables = { ...document.tables } as Record<string, unknown>;
        if (there) tables['gangs'] = { ...emptyTable('gangs.csv'), rows };
        else delete tables['gangs'];
        const made = { ...document, tables } as unknown as Record<string, unknown>;
        if (there) made['holidays'] = rows.flat();
        else delete made['holidays'];
        return made as PlanDocument;
      },
  ),
);

export const document: fc.Arbitrary<PlanDocument> = fc
  .array(deed, { maxLength: 6 })
  .map((deeds) =>
    deeds.reduce((made, item) => item(made), withRows('W1 22:00', 'W2', 'W3 23:00 x')),
  );

/** A fresh copy that shares nothing. */
export const copied = <T>(value: T): T => structuredClone(value);
