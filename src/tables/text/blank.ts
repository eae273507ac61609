// Tables have millions of cells, and nearly none of them begins or ends with a space: a look at both ends is enough.

/** A sign of ASCII that is no space. */
const isPlain = (code: number): boolean => code > 32 && code < 127;

/** The cell without spaces around it. */
export function trimmed(cell: string): string {
  if (cell === '') return cell;
  return isPlain(cell.charCodeAt(0)) && isPlain(cell.charCodeAt(cell.length - 1))
    ? cell
    : cell.trim();
}

/** Whether no cell of a row holds anything but spaces. */
export function isBlank(cells: readonly string[]): boolean {
  for (const cell of cells) if (trimmed(cell) !== '') return false;
  return true;
}
