import type { AccessWindow, PlanRules } from '../model/index.js';
import { ordinaryNeeds } from '../model/index.js';
import { ledgerOf } from '../rules/index.js';

const known = new WeakMap<AccessWindow, { readonly rules: PlanRules; readonly minutes: number }>();

/**
 * Usable minutes of a window for inside work that needs all sections made dead in it; null where none is. Worked out
 * once for a window and its rules.
 */
export function usableWithIsolation(window: AccessWindow, rules: PlanRules): number | null {
  if (window.isolation.length === 0) return null;
  const before = known.get(window);
  if (before?.rules === rules) return before.minutes;
  const isolation = window.isolation.map((section) => section.section);
  const ledger = ledgerOf(window, { ...ordinaryNeeds, isolation }, rules);
  const minutes = ledger.barred.length > 0 ? 0 : ledger.usableMinutes;
  known.set(window, { rules, minutes });
  return minutes;
}
