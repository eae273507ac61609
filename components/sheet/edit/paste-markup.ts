/**
 * The cells of the first table in pasted markup, as text; `undefined` when it has none. The document that reads it is
 * inert: no script runs, nothing is fetched.
 */
export function fromTableMarkup(markup: string): string[][] | undefined {
  const table = new DOMParser().parseFromString(markup, 'text/html').querySelector('table');
  if (!table) return undefined;
  const rows = [...table.rows].map((row) => [...row.cells].flatMap(cellTexts));
  if (rows.length === 0) return undefined;
  const width = Math.max(...rows.map((row) => row.length));
  return rows.map((row) => [...row, ...Array<string>(width - row.length).fill('')]);
}

/** The text of a cell that spans columns goes in the first of them. */
function cellTexts(cell: HTMLTableCellElement): string[] {
  for (const line of cell.querySelectorAll('br')) line.replaceWith('\n');
  const text = (cell.textContent ?? '')
    .split('\n')
    .map((line) => line.replaceAll(/[\t\r ]+/g, ' ').trim())
    .join('\n')
    .trim();
  return [text, ...Array<string>(Math.min(cell.colSpan, 200) - 1).fill('')];
}
