import type { PlanRules } from '../../model/index.js';
import type { Subject } from '../types.js';

/** Says of a step by its side and name whether the rules mark it as guarding people. */
export function guardingSteps(rules: PlanRules): (kind: Subject['kind'], name: string) => boolean {
  const names = {
    'lead-in': new Set(rules.leadIn.filter((one) => one.protects).map((one) => one.step)),
    'lead-out': new Set(rules.leadOut.filter((one) => one.protects).map((one) => one.step)),
  };
  return (kind, name) => kind !== 'work' && names[kind].has(name);
}
