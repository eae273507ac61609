import { expect } from '@open-wc/testing';
import { goldenRun } from '../helpers/risk-golden.js';

// The same two sums stand in tests/unit/risk: a run of the simulation has the same bits in Node and in a browser.
describe('the simulation in a browser', () => {
  it('has the bits it has in Node, triangular', () => {
    expect(goldenRun('triangular')).to.equal('f36391f7');
  });

  it('has the bits it has in Node, beta-PERT', () => {
    expect(goldenRun('beta-pert')).to.equal('fef980bc');
  });
});
