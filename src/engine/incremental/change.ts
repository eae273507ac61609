import { placesIn, unmoved } from '../../edits/index.js';

/**
 * What one value has that another, the one before it, has not. What is the same object in both is not looked into, so
 * the cost is that of the change. Values are what a structured clone keeps: data without cycles.
 */
export type Change =
  | 'same'
  | { readonly value: unknown }
  /** A list: of each thing its place in the list before, or -1 where the next of `added` stands. */
  | { readonly from: Int32Array; readonly added: readonly unknown[] }
  /** An object: every entry that it has now, in order. */
  | { readonly entries: readonly (readonly [name: string, change: Change])[] };

type Entries = Readonly<Record<string, unknown>>;

const isPlain = (value: unknown): value is Entries =>
  typeof value === 'object' && value !== null && Object.getPrototypeOf(value) === Object.prototype;

/** What leads from one value to the next. */
export function changeBetween(before: unknown, after: unknown): Change {
  if (Object.is(before, after)) return 'same';
  if (Array.isArray(before) && Array.isArray(after)) return listChange(before, after);
  if (!isPlain(before) || !isPlain(after)) return { value: after };
  const names = Object.keys(after);
  const entries = names.map(
    (name) =>
      [
        name,
        Object.hasOwn(before, name)
          ? changeBetween(before[name], after[name])
          : { value: after[name] },
      ] as const,
  );
  const old = Object.keys(before);
  return entries.every(([name, change], at) => change === 'same' && name === old[at]) &&
    old.length === names.length
    ? 'same'
    : { entries };
}

function listChange(before: readonly unknown[], after: readonly unknown[]): Change {
  const from = placesIn(before, after);
  if (unmoved(from, before.length)) return 'same';
  const added = after.filter((_, at) => from[at]! < 0);
  return added.length === after.length ? { value: after } : { from, added };
}

/** The value that a change leads to. All that has not changed is the same object as before. */
export function changed(before: unknown, change: Change): unknown {
  if (change === 'same') return before;
  if ('value' in change) return change.value;
  if ('entries' in change) {
    const old = before as Entries;
    return Object.fromEntries(
      change.entries.map(([name, inside]) => [
        name,
        changed(Object.hasOwn(old, name) ? old[name] : undefined, inside),
      ]),
    );
  }
  const old = before as readonly unknown[];
  const { from, added } = change;
  const list = new Array<unknown>(from.length);
  let next = 0;
  for (let at = 0; at < from.length; at += 1) {
    const place = from[at]!;
    list[at] = place < 0 ? added[next++] : old[place];
  }
  return list;
}
