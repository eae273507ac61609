import { describe, expect, it } from 'vitest';
import { certificateWords, leavesUnsaid } from '../../../../src/planner/certificate-words.js';
import type { Unstated } from '../../../../src/planner/unstated.js';

const pair = (kind: Unstated['kind']): Unstated => ({
  activity: 'A',
  other: 'B',
  kind,
  windows: ['W1', 'W2'],
  text: '',
});
const certificate = { text: 'proven best' };

describe('how good a plan is known to be, in words', () => {
  it('is what the search found where nothing is left unsaid', () => {
    const plan = { certificate, unstated: [], notes: [{ code: 'cut-short', text: '' }] };
    expect(certificateWords(plan)).toBe('proven best');
    expect(leavesUnsaid(plan)).toBe(false);
  });

  it.each([
    [[pair('between-windows')], false, 'whether the line is fit to run between one pair of work'],
    [[pair('same-place'), pair('same-place')], false, 'whether 2 pairs of work may share a place'],
    [[], true, 'whether the line is fit to run where work stops'],
  ])(
    'is of the search alone where the line is not stated, and says so first',
    (unstated, open, what) => {
      const notes = open ? [{ code: 'left-open', text: '' }] : [];
      const words = certificateWords({ certificate, unstated, notes });
      expect(words).toMatch(/^of the search alone, as nobody said /);
      expect(words.indexOf(what)).toBeLessThan(words.indexOf('proven best'));
      expect(words).toContain(what);
      expect(leavesUnsaid({ certificate, unstated, notes })).toBe(true);
    },
  );
});
