import type { Row, Splice } from './edit.js';
import { sameRow } from './same.js';

/**
 * The splices that turn `before` into `after`. Equal rows count as kept; rows that are the same array are matched first.
 * Where rows changed order, the longest run that kept its order stays and the others move.
 */
export function rowsBetween(before: readonly Row[], after: readonly Row[]): Splice[] {
  let start = 0;
  const shorter = Math.min(before.length, after.length);
  while (start < shorter && sameRow(before[start], after[start])) start += 1;
  let end = 0;
  while (end < shorter - start && sameRow(before.at(-1 - end), after.at(-1 - end))) end += 1;

  const splices: Splice[] = [];
  let from = start;
  let into = start;
  const anchors = keptRows(before, after, start, end);
  anchors.push([before.length - end, after.length - end]);
  for (const [old, now] of anchors) {
    splices.push(...gap(from, before.slice(from, old), after.slice(into, now)));
    from = old + 1;
    into = now + 1;
  }
  return splices;
}

/** Where both sides have the same number of rows they are compared in pairs, so that a copy of a table gives a small edit. */
function gap(at: number, removed: readonly Row[], added: readonly Row[]): Splice[] {
  if (removed.length === 0 && added.length === 0) return [];
  if (removed.length !== added.length) return [{ at, removed, added }];
  const splices: { at: number; removed: Row[]; added: Row[] }[] = [];
  for (const [index, row] of removed.entries()) {
    if (sameRow(row, added[index])) continue;
    const last = splices.at(-1);
    if (last !== undefined && last.at + last.removed.length === at + index) {
      last.removed.push(row);
      last.added.push(added[index]!);
    } else splices.push({ at: at + index, removed: [row], added: [added[index]!] });
  }
  return splices;
}

/** Index pairs [before, after] of kept rows between the equal start and end; both indexes rise. */
function keptRows(
  before: readonly Row[],
  after: readonly Row[],
  start: number,
  end: number,
): [number, number][] {
  const partner = new Array<number | undefined>(after.length);
  const taken = new Set<number>();
  // Equal rows that are different arrays are matched second, since comparing them means writing each out.
  for (const keyOf of [(row: Row): unknown => row, (row: Row): unknown => JSON.stringify(row)]) {
    const places = new Map<unknown, number[]>();
    for (let at = before.length - end - 1; at >= start; at -= 1) {
      if (taken.has(at)) continue;
      const key = keyOf(before[at]!);
      const list = places.get(key);
      if (list === undefined) places.set(key, [at]);
      else list.push(at);
    }
    if (places.size === 0) break;
    for (let at = start; at < after.length - end; at += 1) {
      if (partner[at] !== undefined) continue;
      const old = places.get(keyOf(after[at]!))?.pop();
      if (old === undefined) continue;
      partner[at] = old;
      taken.add(old);
    }
  }
  const pairs = partner.flatMap((old, at): [number, number][] =>
    old === undefined ? [] : [[old, at]],
  );
  return longestRising(pairs);
}

/** The longest part of the list whose first numbers rise (patience sorting, O(n log n)). */
function longestRising(pairs: readonly [number, number][]): [number, number][] {
  const piles: number[] = [];
  const previous = new Array<number>(pairs.length);
  for (const [index, [value]] of pairs.entries()) {
    let low = 0;
    let high = piles.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (pairs[piles[middle]!]![0] < value) low = middle + 1;
      else high = middle;
    }
    previous[index] = low > 0 ? piles[low - 1]! : -1;
    piles[low] = index;
  }
  const kept: [number, number][] = [];
  for (let at = piles.at(-1) ?? -1; at >= 0; at = previous[at]!) kept.push(pairs[at]!);
  return kept.reverse();
}
