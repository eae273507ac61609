import type { ruleSetSchema } from './rule-set.js';

/** What checks a set of rules. Rejects where it cannot be loaded. */
export const loadRuleSetSchema = async (): Promise<typeof ruleSetSchema> =>
  (await import('./rule-set.js')).ruleSetSchema;
