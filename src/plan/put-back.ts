import type { TableText } from '../model/index.js';
import { columnOfName, plain, rowOfGroup, splitAddress } from './address.js';
import type { Entry } from './registers.js';
import type { TableState } from './table-state.js';
import { writeTable, type Writing } from './write-table.js';

/** Makes an entry stand; a row that was taken away comes back below the last, with what was typed into it. */
export function putBack(
  key: string,
  tables: ReadonlyMap<string, TableState>,
  writing: Writing,
): void {
  const { registers, said } = writing;
  const address = key.slice(0, key.lastIndexOf('|'));
  const entry = registers.entries(address).find((item) => item.key === key);
  if (!entry) return;
  const { kind, group, name, holder } = splitAddress(address);
  if (kind === 't') {
    const table = plain(name);
    writeTable(table, tables.get(table), entry.value as TableText | undefined, writing);
    return;
  }
  if (kind === 'c')
    showPlace(
      entry,
      [...tables.values()].find(({ id }) => id === holder),
      group,
    );
  registers.set(address, entry.value, said, entry.holder);
}

function showPlace({ address }: Entry, state: TableState | undefined, group: string): void {
  if (!state) return;
  const row = rowOfGroup(group);
  if (row !== undefined && state.placeOf(row) < 0) state.rows.push([row]);
  const column = columnOfName(splitAddress(address).name);
  if (!state.ids.columns.includes(column)) state.columns.push([column]);
}
