import type { PlanRules } from '../../model/index.js';
import type { Subject } from '../types.js';

/** Says of a step by its side and name whether the rules mark it as guarding people. */
export function guardingSteps(rules: PlanRules): (kind: Subject['kind'], name: string) => boolean {
  const names = {
    'lead-in': new Set(rules.leadIn.filter((item) => item.protects).map((item) => item.step)),
    'lead-out': new Set(rules.leadOut.filter((item) => item.protects).map((item) => item.step)),
  };
  return (kind, name) => kind !== 'work' && names[kind].has(name);
}
