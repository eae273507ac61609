// Where a value of the plan stands, as text. A group is an address without its last part, so that all cells of a row,
// or all entries of a list, are found together.

const part = encodeURIComponent;

/** A whole entry of the document: `rules`, `prices`. */
export const partAddress = (key: string): string => `p/${part(key)}`;
/** A whole table. */
export const tableAddress = (table: string): string => `t/${part(table)}`;
/** One value within a part or table; `holder` is the id under which the whole was set. */
export const fieldAddress = (holder: string, path: readonly string[]): string =>
  `f/${holder}/${path.map(part).join('.')}`;
export const fieldGroup = (holder: string): string => `f/${holder}`;
export const fieldPath = (name: string): string[] => name.split('.').map(plain);
/** A cell of a row. */
export const cellAddress = (table: string, row: number, column: number): string =>
  `c/${table}/${row.toString(36)}/${column.toString(36)}`;
export const rowGroup = (table: string, row: number): string => `c/${table}/${row.toString(36)}`;
/** The headings of a table's columns. */
export const headAddress = (table: string, column: number): string =>
  `c/${table}/h./${column.toString(36)}`;
export const headGroup = (table: string): string => `c/${table}/h.`;
/** An item of a list of objects. */
export const itemAddress = (holder: string, path: readonly string[], item: string): string =>
  `i/${holder}/${path.map(part).join('.')}/${item}`;
export const itemGroup = (holder: string, path: readonly string[]): string =>
  `i/${holder}/${path.map(part).join('.')}`;

/** An address taken apart. */
export interface Split {
  /** `p`, `t`, `f`, `c`, `i`. */
  readonly kind: string;
  readonly group: string;
  readonly name: string;
  /** Id of the whole that a field, cell or item belongs to; empty for a whole. */
  readonly holder: string;
}

export function splitAddress(address: string): Split {
  const parts = address.split('/');
  return {
    kind: parts[0]!,
    group: address.slice(0, address.lastIndexOf('/')),
    name: parts.at(-1)!,
    holder: parts.length > 2 ? parts[1]! : '',
  };
}

/** The row of a group of cells; undefined for the headings. */
export function rowOfGroup(group: string): number | undefined {
  const text = group.slice(group.lastIndexOf('/') + 1);
  return text === 'h.' ? undefined : parseInt(text, 36);
}

export const columnOfName = (name: string): number => parseInt(name, 36);

/** The text of one part of an address; as it is where it is not formed as ours are. */
export function plain(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    return text;
  }
}
