// The columns that decide who is in danger. They are read under our own heading and its exact synonyms alone: a heading
// that only seems to mean one of them is asked about, or refused by name.
import type { FieldOf, SheetKind } from './fields.js';

/** By kind of table, the fields that decide who is in danger. */
export const dangerFields: { readonly [K in SheetKind]?: readonly FieldOf<K>[] } = {
  windows: ['lines', 'isolation', 'status'],
  work: ['lines', 'isolation'],
};

/** Headings that come near to such a field and may mean its opposite or another table's: never read, always asked. */
export const doubtful: { readonly [K in SheetKind]?: Readonly<Record<string, readonly string[]>> } =
  {
    // The lines of a possession: those that are shut, or those it leaves to trains.
    windows: { lines: ['possession lines', 'lines affected'], isolation: ['isolation required'] },
    // What a window isolates is not what a piece of work needs.
    work: { lines: ['possession lines', 'lines affected'], isolation: ['isolated sections'] },
  };

export function decidesDanger(kind: SheetKind, field: string): boolean {
  return (dangerFields[kind] as readonly string[] | undefined)?.includes(field) ?? false;
}
