import { describe, expect, it } from 'vitest';
import { clockWords, dueWords } from '../../../src/calendar/index.js';

describe('clockWords', () => {
  it.each([
    ['2027-03-07T09:40:00Z', 'Europe/London', 'Sun 7 Mar 2027 09:40'],
    ['2027-10-31T00:30:00Z', 'Europe/London', 'Sun 31 Oct 2027 01:30 (+01:00)'],
    ['2027-10-31T01:30:00Z', 'Europe/London', 'Sun 31 Oct 2027 01:30 (+00:00)'],
    ['2027-12-31T23:05:00Z', 'Pacific/Auckland', 'Sat 1 Jan 2028 12:05'],
  ])('reads %s in %s as %s', (iso, zone, words) => {
    expect(clockWords(Date.parse(iso), zone)).toBe(words);
  });
});

describe('dueWords', () => {
  it.each([
    ['2027-04-05T23:00:00Z', 'Europe/London', 'end of Mon 5 Apr 2027'],
    ['2027-11-01T00:00:00Z', 'Europe/London', 'end of Sun 31 Oct 2027'],
    ['2027-04-06T12:00:00Z', 'Europe/London', 'Tue 6 Apr 2027 13:00'],
    ['2027-01-01T00:00:00Z', 'UTC', 'end of Thu 31 Dec 2026'],
  ])('reads %s in %s as %s', (iso, zone, words) => {
    expect(dueWords(Date.parse(iso), zone)).toBe(words);
  });
});
