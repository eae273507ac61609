import { expect } from '@open-wc/testing';
import { GOLDEN_PLANS, goldenPlans } from '../helpers/plan-golden.js';

// The same sum is asked for in tests/unit/planner/repeatable.test.ts: a plan has the same bytes in Node and in a browser.
describe('the search in a browser', () => {
  it('makes the plans that it makes in Node', () => {
    expect(goldenPlans()).to.equal(GOLDEN_PLANS);
  });
});
