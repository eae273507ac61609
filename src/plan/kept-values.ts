// What somebody typed and does not stand: another typed into the same place without knowing of it, or took the row, the
// column or the table away. It is kept until a person puts it back or lets it go.
import {
  columnOfName,
  fieldAddress,
  fieldPath,
  partAddress,
  plain,
  rowOfGroup,
  splitAddress,
  tableAddress,
} from './address.js';
import { partKeys } from './part-schema.js';
import type { Entry, Registers } from './registers.js';
import type { TableState } from './table-state.js';

/** A value that does not stand. */
export interface KeptValue {
  readonly id: string;
  /** Where it was set, in words: `windows, row 4, start`. */
  readonly place: string;
  /** Absent: it is not of a table. */
  readonly table?: string;
  /** Place of its row, 0 for the first; absent: the row is gone. */
  readonly row?: number;
  /** Heading of its column. */
  readonly column?: string;
  /** As text; of what is no text, the JSON of it. */
  readonly value: string;
  /** What stands there; undefined: the place is gone. */
  readonly instead: string | undefined;
  /** Who set it; empty: not said. */
  readonly by: string;
  /** When, epoch ms, by the clock of whoever set it. */
  readonly at: number;
}

/** Longest text of a value that is told whole. */
const longest = 2_000;

/** All that does not stand, the last set first. */
export function keptValues(
  registers: Registers,
  tables: ReadonlyMap<string, TableState>,
): readonly KeptValue[] {
  const holders = new Set<string>();
  const wholes = new Map<string, string>();
  for (const key of partKeys) note(registers.standing(partAddress(key)), key);
  for (const name of tables.keys()) note(registers.standing(tableAddress(name)), name);
  const found: KeptValue[] = [];
  const byId = new Map([...tables].map(([name, state]) => [state.id, { name, state }]));

  for (const address of registers.disputed) {
    // Of two plans agreed at once, the earlier stands among the earlier plans.
    if (address.startsWith('f/') && address.endsWith('/now')) continue;
    if (!isLive(address)) continue;
    const [stands, ...others] = registers.entries(address);
    for (const other of others) add(other, textOf(stands!.value));
  }
  for (const group of registers.groups()) {
    if (group === 'p' || group === 't' || isLive(`${group}/`)) continue;
    for (const entries of registers.group(group).values())
      for (const entry of entries) add(entry, undefined);
  }
  for (const { state } of byId.values())
    for (const group of registers.groups())
      if (group.startsWith(`c/${state.id}/`) && isLive(`${group}/`))
        for (const [column, entries] of registers.group(group))
          if (!state.ids.columns.includes(columnOfName(column)))
            for (const entry of entries) addOnce(entry, undefined);
  // A field set in ignorance of the whole that was set later around it.
  for (const holder of holders)
    for (const [name, [field]] of registers.group(`f/${holder}`)) {
      const around = wholeAround(holder, name);
      if (around && field && around.at > field.at) addOnce(field, textOf(around.value));
    }
  return found.sort((a, b) => b.at - a.at || (a.id < b.id ? -1 : 1));

  function note(entry: Entry | undefined, name: string): void {
    if (entry?.holder === undefined || entry.value === undefined) return;
    holders.add(entry.holder);
    wholes.set(entry.holder, name);
    for (const [field] of registers.group(`f/${entry.holder}`).values())
      if (field?.holder !== undefined) {
        holders.add(field.holder);
        wholes.set(field.holder, name);
      }
  }

  /** Whether what stands at an address is part of the plan; of a cell, whether its row is. */
  function isLive(address: string): boolean {
    const { kind, group, holder } = splitAddress(address);
    if (kind === 'p' || kind === 't') return true;
    if (kind !== 'c') return holders.has(holder);
    const table = byId.get(holder);
    const row = rowOfGroup(group);
    return table !== undefined && (row === undefined || table.state.placeOf(row) >= 0);
  }

  function wholeAround(holder: string, name: string): Entry | undefined {
    const path = fieldPath(name);
    return path.length < 2
      ? undefined
      : registers.standing(fieldAddress(holder, path.slice(0, -1)));
  }

  function addOnce(entry: Entry, instead: string | undefined): void {
    if (!found.some((value) => value.id === entry.key)) add(entry, instead);
  }

  function add(entry: Entry, instead: string | undefined): void {
    const { key: id, by, at, value } = entry;
    found.push({ id, by, at, value: textOf(value), instead, ...placeOf(entry.address) });
  }

  function placeOf(address: string): Pick<KeptValue, 'place' | 'table' | 'row' | 'column'> {
    const { kind, group, name, holder } = splitAddress(address);
    if (kind === 'p' || kind === 't') return { place: plain(name) };
    if (kind !== 'c') {
      const path =
        kind === 'f' ? fieldPath(name) : fieldPath(group.slice(group.lastIndexOf('/') + 1));
      return { place: [wholes.get(holder) ?? 'what was replaced', ...path].join(', ') };
    }
    const table = byId.get(holder);
    if (!table) return { place: 'a table that was replaced' };
    const column = table.state.headingOf(columnOfName(name));
    const row = rowOfGroup(group);
    if (row === undefined)
      return { place: `${table.name}, heading ${column}`, table: table.name, column };
    const at = table.state.placeOf(row);
    return {
      place: `${table.name}, ${at < 0 ? 'a row taken away' : `row ${at + 1}`}, ${column}`,
      table: table.name,
      column,
      ...(at >= 0 && { row: at }),
    };
  }
}

function textOf(value: unknown): string {
  if (value === undefined) return '';
  const text = typeof value === 'string' ? value : JSON.stringify(value);
  return text.length > longest ? `${text.slice(0, longest)} …` : text;
}
