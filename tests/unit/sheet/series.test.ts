import { describe, expect, it } from 'vitest';
import { continued, daysLater } from '../../../components/sheet/edit/series.js';

describe('a series that is continued', () => {
  it.each([
    [
      ['1', '2'],
      ['3', '4'],
    ],
    [
      ['10', '7'],
      ['4', '1'],
    ],
    [
      ['0.1', '0.2'],
      ['0.3', '0.4'],
    ],
    [
      ['N09', 'N10'],
      ['N11', 'N12'],
    ],
    [
      ['N-08', 'N-09'],
      ['N-10', 'N-11'],
    ],
    [
      ['1', '-1'],
      ['-3', '-5'],
    ],
    // Gregorian leap rule: 2028 has a 29 February, 2027 has none.
    [
      ['2028-02-27', '2028-02-28'],
      ['2028-02-29', '2028-03-01'],
    ],
    [
      ['2027-02-20 23:30', '2027-02-27 23:30'],
      ['2027-03-06 23:30', '2027-03-13 23:30'],
    ],
  ])('%j goes on to %j', (seeds, more) => {
    expect(continued(seeds, 2)).toEqual(more);
  });

  it.each([
    [['1']],
    [['1', '2', '4']],
    [['a', 'b']],
    [['N1', 'M2']],
    [['2027-02-30', '2027-02-31x']],
  ])('%j has no sure step', (seeds) => {
    expect(continued(seeds, 2)).toBeUndefined();
  });

  it('moves a date and keeps the time behind it', () => {
    expect(daysLater('2027-12-31 22:50', 1)).toBe('2028-01-01 22:50');
    expect(daysLater('2027-02-29', 1)).toBeUndefined();
  });
});
