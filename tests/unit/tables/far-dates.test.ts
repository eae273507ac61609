// A slip in a year, in every table whose dates belong to the windows.
import { describe, expect, it } from 'vitest';
import { planFrom } from '../../../src/tables/index.js';
import { messageOf } from '../../helpers/problem-words.js';

const windows = {
  file: 'windows.csv',
  content: `window,start,end,lines,isolation,status
W1,2027-03-01 23:00,2027-03-02 05:00,Up,,confirmed
W2,2027-04-01 23:00,2027-04-02 05:00,Up,,confirmed
`,
};

function farIn(table: Record<string, string>): string[] {
  const sources = Object.fromEntries(
    Object.entries(table).map(([kind, content]) => [kind, { file: `${kind}.csv`, content }]),
  );
  return planFrom({ windows, ...sources })
    .faults.filter((fault) => fault.code === 'date-far-off')
    .map(({ file, line, column, value, severity, ...fault }) => {
      expect(severity).toBe('warning');
      expect(messageOf(fault)).toContain('Meant 2027?');
      return `${file} ${line} ${column} ${value}`;
    });
}

describe('a date years away from every window', () => {
  it.each([
    [
      'work',
      'activity,minutes,key date,not before\nA,60,2072-04-01,\nB,60,2028-04-01,2019-01-01\n',
      ['work.csv 2 key date 2072-04-01', 'work.csv 3 not before 2019-01-01'],
    ],
    [
      'trains',
      'train,passes at,window\n1A,2127-03-02 05:30,W1\n1B,2027-03-02 05:40,W1\n',
      ['trains.csv 2 passes at 2127-03-02 05:30'],
    ],
    [
      'roster',
      'crew,start,end\nA,2037-03-01 22:00,2037-03-02 06:00\nA,2027-03-01 22:00,2027-03-02 06:00\n',
      ['roster.csv 2 start 2037-03-01 22:00', 'roster.csv 2 end 2037-03-02 06:00'],
    ],
    [
      'forecast',
      'time,wind (m/s)\n2072-03-01 22:00,4\n2027-03-01 23:00,4\n',
      ['forecast.csv 2 time 2072-03-01 22:00'],
    ],
    [
      'temperatures',
      'time,temperature (C)\n2017-03-01 22:00,4\n',
      ['temperatures.csv 2 time 2017-03-01 22:00'],
    ],
  ])('%s: is told at its cell', (kind, content, expected) => {
    expect(farIn({ [kind]: content })).toEqual(expected);
  });

  it('is nothing unlikely where a stock is there from or until then', () => {
    const content =
      'resource,capacity,from,to\ncrane,1,2000-01-01,2099-12-31\ngang,1,2041-01-01,\n';
    expect(farIn({ resources: content })).toEqual(['resources.csv 3 from 2041-01-01']);
  });

  it('is not found in a time without a colon beside a year that is near', () => {
    const content = 'train,passes at,window\n1A,2130 02/03/2027,W1\n1B,02.03.2027 2159,W1\n';
    expect(farIn({ trains: content })).toEqual([]);
  });
});
