import { sameJson } from '../edits/index.js';
import { itemIds } from './part-state.js';
import { isItems, isParts } from './values.js';

/** What of a value is to be set: a field whole, or items of a list. Paths are within the part. */
export type PartSet =
  | { readonly path: readonly string[]; readonly value: unknown }
  | { readonly list: readonly unknown[]; readonly items: ItemsSet };

/** Items of a list by their place in the list it was made for. */
export interface ItemsSet {
  readonly set: readonly { readonly at: number; readonly item: unknown }[];
  readonly removed: readonly number[];
  /** Items put in, in order; `after`: place of the item before, or of the item put in before it (`added`). */
  readonly added: readonly { readonly item: unknown; readonly after: After }[];
  /** Where those that stay changed order: all places of the new list, of what stays and of what was put in. */
  readonly order?: readonly After[];
}

export type After = { readonly at: number } | { readonly added: number } | null;

/** What leads from one value of a part to another, in as small pieces as two people may change at once. */
export function partChanges(
  from: unknown,
  to: unknown,
  depth: number,
  path: readonly string[] = [],
): PartSet[] {
  if (sameJson(from, to)) return [];
  if (path.length > 0 && isItems(from) && isItems(to) && itemIds.has(from))
    return [{ list: from, items: itemsBetween(from, to) }];
  if (isParts(from) && isParts(to) && path.length < depth) {
    const keys = new Set([...Object.keys(from), ...Object.keys(to)]);
    return [...keys].flatMap((key) => partChanges(from[key], to[key], depth, [...path, key]));
  }
  return [{ path, value: to }];
}

/** Items are known again by what they hold; where as many are left over on both sides, they are the same retyped. */
export function itemsBetween(from: readonly unknown[], to: readonly unknown[]): ItemsSet {
  const partner = new Array<number | undefined>(to.length);
  const taken = new Set<number>();
  for (const alike of [Object.is, sameJson])
    for (const [at, item] of to.entries()) {
      if (partner[at] !== undefined) continue;
      const old = from.findIndex((old, place) => !taken.has(place) && alike(old, item));
      if (old < 0) continue;
      partner[at] = old;
      taken.add(old);
    }
  const left = from.flatMap((_, at) => (taken.has(at) ? [] : [at]));
  const fresh = to.flatMap((_, at) => (partner[at] === undefined ? [at] : []));
  const set: { at: number; item: unknown }[] = [];
  if (left.length === fresh.length)
    for (const [k, at] of fresh.entries()) {
      partner[at] = left[k]!;
      set.push({ at: left[k]!, item: to[at] });
    }
  const added: { item: unknown; after: After }[] = [];
  const places: Exclude<After, null>[] = [];
  for (const [at, item] of to.entries()) {
    const old = partner[at];
    if (old === undefined) {
      added.push({ item, after: places.at(-1) ?? null });
      places.push({ added: added.length - 1 });
    } else places.push({ at: old });
  }
  const stay = partner.filter((old) => old !== undefined);
  const risen = stay.every((old, k) => k === 0 || stay[k - 1]! < old);
  const removed = left.length === fresh.length ? [] : left;
  return { set, removed, added, ...(!risen && { order: places }) };
}
