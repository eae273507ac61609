import { LANDSCAPE } from '../../shared/paper.js';

/** Of 8pt text on paper, in CSS pixels: a character on average, and what a cell adds to its text. */
const CHARACTER = 6.4;
const CELL = 12;
/** A word longer than this may be broken. */
const LONGEST = 24;

/** Least width of a column in CSS pixels: that of its longest word. */
export function roomFor(texts: readonly string[]): number {
  let longest = 1;
  for (const text of texts)
    for (const word of text.split(/[\s;]+/)) longest = Math.max(longest, word.length);
  return Math.min(longest, LONGEST) * CHARACTER + CELL;
}

/**
 * Which columns stand on which sheet of paper, by their places: all on one where they have room, else as many as go
 * on each, the first of them again on every one. A column is never left out, however wide.
 *
 * @param rooms Least width of each column, CSS pixels.
 * @param beside What stands before them on every sheet.
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
