import { expect, it } from 'vitest';
import { noRules, ruleSetSchema } from '../../../src/model/index.js';

it('rules that deduct nothing are what the schema makes of a file that names none', () => {
  expect(noRules).toEqual(ruleSetSchema.parse({ schema: 1, name: 'none' }));
});
