import { describe, expect, it } from 'vitest';
import { oddities } from './oddities.js';

// Seed 43 of the slips of `allocate`: 600 typed twice, told by its line and by no name.
const files = { work: 'activity,minutes\nA,60\nB,600600\n' };
const answer = {
  notes: [],
  placements: [
    { activity: 'B', window: null, from: '2027-03-01T00:00:00Z', to: '2028-04-21T02:00:00Z' },
  ],
};

describe('an unlikely thing', () => {
  it('is said where the line of its row is', () => {
    expect(oddities(answer, files, 'warning: work, line 3, column "minutes": It goes on')).toEqual(
      [],
    );
  });

  it('is not said where only another line is', () => {
    expect(oddities(answer, files, 'warning: work, line 30, column "minutes": It goes on')).toEqual(
      ['B goes on from 2027-03-01T00:00:00Z to 2028-04-21T02:00:00Z, and nothing says so'],
    );
  });
});
