import type { AccountRequest } from '../../../src/engine/index.js';
import type { ShiftPlan } from '../shift/shift-store.js';

// What was entered of a late handback outlives the page: it is written to the browser's own storage with each change.

const keyOf = ({ id, name }: ShiftPlan, window: string): string =>
  `possession-fit/account/${id ?? `name/${name}`}/${window}`;

/** What was entered of one window; null when nothing was kept or storage cannot be read. */
export function readAccount(plan: ShiftPlan, window: string): AccountRequest | null {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(keyOf(plan, window)) ?? 'null');
    return isRequest(kept, window) ? kept : null;
  } catch {
    return null;
  }
}

const isRequest = (value: unknown, window: string): value is AccountRequest =>
  typeof value === 'object' &&
  value !== null &&
  (value as { window?: unknown }).window === window &&
  Number.isFinite((value as { actualHandback?: unknown }).actualHandback);

/** Keeps what was entered in place of what was kept before. Returns whether it is safe in storage. */
export function keepAccount(plan: ShiftPlan, request: AccountRequest): boolean {
  try {
    localStorage.setItem(keyOf(plan, request.window), JSON.stringify(request));
    return true;
  } catch {
    return false;
  }
}
