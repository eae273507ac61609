// Puts a value of the plan other than a cell into the doc. Inside a transaction.
import { fieldAddress, fieldGroup, fieldPath, itemAddress, partAddress } from './address.js';
import type { PartChange } from './change.js';
import { partChanges, type After, type ItemsSet } from './part-changes.js';
import { fieldDepth } from './part-schema.js';
import { itemIds, orderItem, type ItemIds, type ItemValue } from './part-state.js';
import type { Registers } from './registers.js';
import { isParts } from './values.js';
import type { Writing } from './write-table.js';

/** Sets what of a part differs from what the maker saw. `now`: the part as it stands. */
export function writePart(change: PartChange, now: unknown, writing: Writing): void {
  const [key = '', ...path] = change.part;
  const saw = 'from' in change ? change.from : valueAt(now, path);
  const whole = writing.registers.standing(partAddress(key));
  const isWhole = whole?.holder === undefined || whole.value === undefined;
  if (path.length === 0 && (isWhole || change.value === undefined || saw === undefined)) {
    setWhole(key, change.value, writing);
    return;
  }
  if (isWhole) throw new RangeError(`The plan has nothing under ${key}.`);
  if (key === 'agreed') settleAgreed(whole.holder, now, writing);
  for (const set of partChanges(saw, change.value, fieldDepth(key), path)) {
    if ('list' in set) setItems(itemIds.get(set.list)!, set.items, writing);
    else if (set.path.length === 0) setWhole(key, set.value, writing);
    else setField(whole.holder, set.path, set.value, writing);
  }
}

function valueAt(from: unknown, path: readonly string[]): unknown {
  return path.reduce<unknown>(
    (at, key) => (isParts(at) && Object.hasOwn(at, key) ? at[key] : undefined),
    from,
  );
}

function setWhole(key: string, value: unknown, { registers, said, freshIds }: Writing): void {
  const before = registers.standing(partAddress(key));
  if (before?.holder !== undefined) {
    const fields = registers.group(fieldGroup(before.holder)).values();
    for (const holder of [before.holder, ...[...fields].flatMap(([entry]) => entry?.holder ?? [])])
      forget(registers, holder);
  }
  registers.set(partAddress(key), value, said, freshIds(1).toString(36));
}

function forget(registers: Registers, holder: string): void {
  registers.clearGroup(fieldGroup(holder));
  for (const group of [...registers.groups()])
    if (group.startsWith(`i/${holder}/`)) registers.clearGroup(group);
}

function setField(
  holder: string,
  path: readonly string[],
  value: unknown,
  { registers, said, freshIds }: Writing,
): void {
  for (const name of [...registers.group(fieldGroup(holder)).keys()]) {
    const deeper = fieldPath(name);
    if (deeper.length > path.length && path.every((key, at) => deeper[at] === key))
      registers.clear(`${fieldGroup(holder)}/${name}`);
  }
  registers.set(fieldAddress(holder, path), value, said, freshIds(1).toString(36));
}

function setItems(ids: ItemIds, items: ItemsSet, { registers, said, freshIds }: Writing): void {
  const address = (id: string): string => itemAddress(ids.holder, ids.path, id);
  const fresh = items.added.map(() => freshIds(1).toString(36));
  const idOf = (after: After): string =>
    after === null ? '' : 'at' in after ? idAt(ids, after.at) : fresh[after.added]!;
  for (const { at, item } of items.set) {
    const id = idAt(ids, at);
    const held = registers.standing(address(id))?.value as ItemValue | undefined;
    const after = held && 'item' in held ? held.after : undefined;
    registers.set(address(id), { item, ...(after !== undefined && { after }) }, said);
  }
  for (const at of items.removed) registers.set(address(idAt(ids, at)), { gone: true }, said);
  for (const [k, { item, after }] of items.added.entries())
    registers.set(address(fresh[k]!), { item, after: idOf(after) }, said);
  if (items.order) registers.set(address(orderItem), items.order.map(idOf), said);
}

const idAt = ({ ids }: ItemIds, at: number): string => ids[at] ?? '';

/** A plan that was agreed at the same time as another becomes an earlier one for good, before a third is agreed. */
function settleAgreed(holder: string, now: unknown, writing: Writing): void {
  const { registers, said, freshIds } = writing;
  const earlier = valueAt(now, ['earlier']);
  const ids = Array.isArray(earlier) ? itemIds.get(earlier) : undefined;
  if (!ids?.ids.includes('') || !Array.isArray(earlier)) return;
  let after = '';
  const settled = ids.ids.map((id, at) => {
    const own = id === '' ? freshIds(1).toString(36) : id;
    if (id === '')
      registers.set(itemAddress(ids.holder, ids.path, own), { item: earlier[at], after }, said);
    after = own;
    return own;
  });
  itemIds.set(earlier, { ...ids, ids: settled });
  const [stands, ...others] = registers.entries(fieldAddress(holder, ['now']));
  for (const { key } of others) if (key !== stands?.key) registers.take(key);
  // The number that it got beside the other stays, whatever becomes of the other.
  const inForce = valueAt(now, ['now']);
  if (stands && isParts(inForce) && inForce !== stands.value)
    setField(holder, ['now'], inForce, writing);
}
