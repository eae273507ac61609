// One entry of the plan as it stands (rules, prices, the agreed plan): what was set as one value, with the fields and the
// items of its lists that were set since laid over it.
import { fieldAddress, fieldGroup, fieldPath, itemGroup, partAddress } from './address.js';
import type { Entry, Registers } from './registers.js';
import { isValidPart } from './part-schema.js';
import { isItems, isParts, shared, type Parts } from './values.js';

/** Which item stands at each place of a list, and where they stand in the registers. */
export interface ItemIds {
  readonly holder: string;
  readonly path: readonly string[];
  readonly ids: readonly string[];
}

/** The ids of every list that was made here, for as long as somebody holds it. */
export const itemIds = new WeakMap<readonly unknown[], ItemIds>();

/** Name of the register that holds the order of a list. */
export const orderItem = '~';

/** What the register of an item holds. */
export type ItemValue =
  | { readonly gone: true }
  /** `after`: of an item that was put in, the id of the item it was put after; empty: at the front. */
  | { readonly item: unknown; readonly after?: string };

/**
 * The value of an entry of the plan; undefined where it has none. Equal parts of `before` are the same objects.
 *
 * Two people's fields may make a whole that no plan has: then the latest of them are left out until it is one.
 */
export function partOf(registers: Registers, key: string, before: unknown): unknown {
  for (const whole of registers.entries(partAddress(key))) {
    if (whole.value === undefined) return undefined;
    const fields = fieldsOf(registers, whole);
    const latest = [...new Set(fields.map(({ entry }) => entry.at))].sort((a, b) => b - a);
    for (const most of [Infinity, ...latest]) {
      const made = build(
        registers,
        whole,
        whole.value,
        [],
        fields.filter(({ entry }) => entry.at < most),
      );
      const value = key === 'agreed' ? withDisputed(registers, whole, made) : made;
      if (isValidPart(key, value)) return register(shared(before, value));
    }
    if (isValidPart(key, whole.value)) return register(shared(before, whole.value));
  }
  return undefined;
}

interface Field {
  readonly path: readonly string[];
  readonly entry: Entry;
}

function fieldsOf(registers: Registers, { holder = '' }: Entry): Field[] {
  return [...registers.group(fieldGroup(holder))].map(([name, entries]) => ({
    path: fieldPath(name),
    entry: entries[0]!,
  }));
}

/** Lists that were merged here, until the value they are part of is taken. */
const merged = new WeakMap<readonly unknown[], ItemIds>();

/** `set`: the entry that the value is of. A field within it that was set before it, in ignorance of it, does not stand. */
function build(
  registers: Registers,
  set: Entry,
  value: unknown,
  path: readonly string[],
  fields: readonly Field[],
): unknown {
  if (isItems(value)) return withItems(registers, value, set.holder ?? '', path);
  if (!isParts(value)) return value;
  const own = new Map(
    fields
      .filter(({ path: to, entry }) => isChild(to, path) && entry.at >= set.at)
      .map(({ path: to, entry }) => [to.at(-1)!, entry]),
  );
  const made: Record<string, unknown> = {};
  for (const key of new Set([...Object.keys(value), ...own.keys()])) {
    const entry = own.get(key);
    const from = entry ? entry.value : value[key];
    if (from === undefined) continue;
    made[key] = build(registers, entry ?? set, from, [...path, key], fields);
  }
  return made;
}

const isChild = (path: readonly string[], of: readonly string[]): boolean =>
  path.length === of.length + 1 && of.every((key, at) => path[at] === key);

function withItems(
  registers: Registers,
  list: readonly Parts[],
  holder: string,
  path: readonly string[],
): readonly unknown[] {
  const group = registers.group(itemGroup(holder, path));
  const base = list.map((_, at) => String(at));
  const held = new Map<string, ItemValue>();
  for (const [name, [entry]] of group)
    if (name !== orderItem && isParts(entry!.value)) held.set(name, entry!.value as ItemValue);
  const ids = orderOf(base, held, group.get(orderItem)?.[0]?.value);
  const shown = ids.filter((id) => {
    const item = held.get(id);
    return item === undefined ? id in list : 'item' in item;
  });
  const items = shown.map((id) => {
    const item = held.get(id);
    return item !== undefined && 'item' in item ? item.item : list[Number(id)];
  });
  const made = group.size === 0 ? list : items;
  merged.set(made, { holder, path, ids: shown });
  return made;
}

/** Every id once: in the order that was set last, what was put in since after what it was put after. */
function orderOf(
  base: readonly string[],
  held: ReadonlyMap<string, ItemValue>,
  set: unknown,
): string[] {
  const ordered = Array.isArray(set) ? set.filter((id) => typeof id === 'string') : base;
  const ids = [...new Set([...ordered, ...base])];
  const placed = new Set(ids);
  let left = [...held]
    .flatMap(([id, value]) =>
      'item' in value && !placed.has(id) ? [{ id, after: value.after }] : [],
    )
    .sort((a, b) => (a.id < b.id ? 1 : -1));
  while (left.length > 0) {
    const next = left.filter(({ after = '' }) => after === '' || placed.has(after));
    for (const { id, after = '' } of next) {
      ids.splice(after === '' ? 0 : ids.indexOf(after) + 1, 0, id);
      placed.add(id);
    }
    if (next.length === 0) {
      ids.push(...left.map(({ id }) => id).reverse());
      break;
    }
    left = left.filter(({ id }) => !placed.has(id));
  }
  return ids;
}

/**
 * Where two people agreed a plan at once, the earlier of the two stands among the earlier ones; and what both put there,
 * the plan that was in force before, stands there once. Of two with one number the later has the next free number, so
 * that no paper with the number of the one passes for the other.
 */
function withDisputed(registers: Registers, whole: Entry, made: unknown): unknown {
  if (!isParts(made) || !isItems(made['earlier'])) return made;
  const { earlier } = made;
  const others = registers
    .entries(fieldAddress(whole.holder ?? '', ['now']))
    .slice(1)
    .map(({ value }) => value)
    .filter(isParts);
  const ids = merged.get(earlier);
  const seen = new Set([planKey(made['now'])]);
  const all = [
    ...others.map((plan) => ({ plan, id: '' })),
    ...earlier.map((plan, at) => ({ plan, id: ids?.ids[at] ?? '' })),
  ];
  const kept = all.filter(({ plan }) => {
    const key = planKey(plan);
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
  const now = made['now'];
  const plans = [...(isParts(now) ? [now] : []), ...kept.map(({ plan }) => plan)];
  const numbered = withOwnNumbers(plans);
  const same = kept.length === earlier.length && numbered.every((plan, at) => plan === plans[at]);
  if (same && others.length === 0) return made;
  const list = isParts(now) ? numbered.slice(1) : numbered;
  if (ids) merged.set(list, { ...ids, ids: kept.map(({ id }) => id) });
  return { ...made, ...(isParts(now) && { now: numbered[0] }), earlier: list };
}

/** Whether two plans are the same, whatever number they have. */
const planKey = (plan: unknown): string =>
  isParts(plan) ? JSON.stringify({ ...plan, revision: 0 }) : '';

/** Plans, the latest first, each with a number that none before it has; who has one already keeps it. */
function withOwnNumbers(plans: readonly Parts[]): Parts[] {
  const numbers = new Set<unknown>();
  let most = 0;
  return plans
    .toReversed()
    .map((plan) => {
      const { revision } = plan;
      const own = typeof revision !== 'number' || numbers.has(revision) ? most + 1 : revision;
      numbers.add(own);
      most = Math.max(most, own);
      return own === revision ? plan : { ...plan, revision: own };
    })
    .reverse();
}

/** Makes the ids of the lists known that the value holds. */
function register({
  value,
  kept,
}: {
  value: unknown;
  kept: ReadonlyMap<unknown, unknown>;
}): unknown {
  const walk = (item: unknown): void => {
    if (Array.isArray(item)) {
      const ids = merged.get((kept.get(item) ?? item) as readonly unknown[]);
      if (ids) itemIds.set(item, ids);
    } else if (isParts(item)) for (const inner of Object.values(item)) walk(inner);
  };
  walk(value);
  return value;
}
