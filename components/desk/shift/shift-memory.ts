import type { Allocation } from '../../../src/engine/index.js';
import type { PlanDocument } from '../../../src/model/index.js';

// A page that is loaded anew during a shift is back in it at once, with the plan of work that the shift goes by.

const KEY = 'possession-fit/shift-open';

export interface OpenShift {
  readonly window: string;
  readonly allocation: Allocation;
}

interface Kept extends OpenShift {
  readonly document: string;
}

/** Parts in the order of their names: a store gives back what it was given in an order of its own. */
const inOrder = (_: string, value: unknown): unknown =>
  value !== null && typeof value === 'object' && !Array.isArray(value)
    ? Object.fromEntries(Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1)))
    : value;

/** Changes with anything that a plan of work rests on. */
function fingerprint({ tables, rules, zone }: PlanDocument): string {
  const text = JSON.stringify([tables, rules, zone], inOrder);
  let hash = 0;
  for (let k = 0; k < text.length; k += 1) hash = (Math.imul(hash, 31) + text.charCodeAt(k)) | 0;
  return `${text.length}-${hash}`;
}

/** Remembers the shift that is open; null: none is. Nothing is lost where storage is full. */
export function rememberShift(document: PlanDocument, open: OpenShift | null): void {
  try {
    if (!open) localStorage.removeItem(KEY);
    else localStorage.setItem(KEY, JSON.stringify({ ...open, document: fingerprint(document) }));
  } catch {
    // The shift goes on without being remembered.
  }
}

/** The shift that was open when the page was left, if it is one of this very document. */
export function openShift(document: PlanDocument): OpenShift | null {
  try {
    const kept = JSON.parse(localStorage.getItem(KEY) ?? 'null') as Kept | null;
    return kept && kept.document === fingerprint(document) ? kept : null;
  } catch {
    return null;
  }
}
