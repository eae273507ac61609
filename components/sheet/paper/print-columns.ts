import { LANDSCAPE } from '../../shared/paper.js';

/** Printed 8pt text, in CSS pixels: average width of a character, and padding of a cell. */
const CHARACTER = 6.4;
const CELL = 12;
/** Words longer than this may be broken. */
const LONGEST = 24;

/** Minimum width of a column in CSS pixels: that of its longest word. */
export function roomFor(texts: readonly string[]): number {
  let longest = 1;
  for (const text of texts)
    for (const word of text.split(/[\s;]+/)) longest = Math.max(longest, word.length);
  return Math.min(longest, LONGEST) * CHARACTER + CELL;
}

/**
 * Column indexes for each printed sheet: all on one if they fit, otherwise as many as fit on each, with the first
 * column repeated. No column is left out, however wide.
 *
 * @param rooms Minimum width of each column, CSS pixels.
 * @param beside Width taken before them on every sheet.
 */
export function columnGroups(
  rooms: readonly number[],
  beside: number,
  sheet = LANDSCAPE,
): readonly (readonly number[])[] {
  const [first] = rooms;
  if (first === undefined) return [];
  const groups: number[][] = [];
  let used = Infinity;
  for (let at = 1; at < rooms.length; at += 1) {
    if (used + rooms[at]! > sheet) {
      groups.push([0]);
      used = beside + first;
    }
    groups.at(-1)!.push(at);
    used += rooms[at]!;
  }
  return groups.length > 0 ? groups : [[0]];
}
