// What others send is looked at before any of it is taken, as a file is: its size, what kinds of thing are in it, and
// that each is formed as the plan's own are. What it makes of the plan is checked again as it is put together.
import * as Y from 'yjs';
import { isTable, mostColumns, mostRows, unpacked } from './table-base.js';
import { mostTyped } from '../model/too-long.js';

/** Most bytes of one update. */
export const mostUpdateBytes = 64 * 1024 * 1024;
/** Most separate things in one update. */
const mostThings = 4_000_000;
/** Deepest nesting of a value. */
const deepest = 40;

/** Why an update may not be taken, in words; undefined where it may. */
export function whatComesIn(update: Uint8Array): string | undefined {
  if (update.length > mostUpdateBytes)
    return `It is too large: ${update.length} bytes, and ${mostUpdateBytes} are taken at most.`;
  let structs;
  try {
    ({ structs } = Y.decodeUpdate(update));
  } catch {
    return 'It cannot be read: part of it is missing or damaged.';
  }
  if (structs.length > mostThings) return `It holds too many changes: ${structs.length}.`;
  for (const struct of structs) {
    const trouble = struct instanceof Y.Item ? troubleOf(struct) : undefined;
    if (trouble !== undefined) return trouble;
  }
  return undefined;
}

const roots = /^(?:values|added|shift)$|^order\/[0-9a-z]{1,30}\/(?:rows|columns)$/;

function troubleOf(item: Y.Item): string | undefined {
  const parent: unknown = item.parent;
  if (typeof parent === 'string' && !roots.test(parent))
    return `It writes outside the plan (${parent.slice(0, 40)}).`;
  const { content } = item;
  if (content instanceof Y.ContentDeleted) return undefined;
  if (!(content instanceof Y.ContentAny)) return 'It holds a kind of content that no plan has.';
  return content.arr.every(isTaken) ? undefined : 'It holds a value that no plan has.';
}

/** A place in an order, the cells of a row added, a column added, an entry of a log, or a value with who set it. */
function isTaken(value: unknown): boolean {
  if (typeof value === 'number') return Number.isSafeInteger(value) && value >= 0;
  if (Array.isArray(value) && value.length >= 3 && isBigTable(value[0]))
    return isTable(unpacked(value[0]));
  return isPlain(value, 0);
}

/** A table is looked through by its own rules: quicker, and with its own limits. */
const isBigTable = (value: unknown): boolean =>
  typeof value === 'object' && value !== null && 'rows' in value && 'columns' in value;

/** Numbers, texts, lists and objects without names that reach into a program. */
function isPlain(value: unknown, depth: number): boolean {
  if (depth > deepest) return false;
  if (value === null || value === undefined || typeof value === 'boolean') return true;
  if (typeof value === 'string') return value.length <= mostTyped;
  if (typeof value === 'number') return Number.isFinite(value);
  if (Array.isArray(value))
    return (
      value.length <= Math.max(mostRows, mostColumns) &&
      value.every((item) => isPlain(item, depth + 1))
    );
  if (typeof value !== 'object' || Object.getPrototypeOf(value) !== Object.prototype) return false;
  return Object.entries(value).every(
    ([key, item]) => !refusedKeys.has(key) && isPlain(item, depth + 1),
  );
}

const refusedKeys = new Set(['__proto__', 'constructor', 'prototype']);
