import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  addMinutes,
  durationText,
  HOUR,
  lengthMinutes,
  MINUTE,
  minutesBetween,
} from '../../../src/calendar/index.js';

describe('minutes in words', () => {
  it.each([
    [0, '0 min'],
    [-0.4, '0 min'],
    [0.5, '1 min'],
    [1, '1 min'],
    [-1, '-1 min'],
    [59, '59 min'],
    [60, '1 h'],
    [61, '1 h 01'],
    [80, '1 h 20'],
    [119, '1 h 59'],
    [-45, '-45 min'],
    [-120, '-2 h'],
    [1440, '24 h'],
    [5999, '99 h 59'],
    [6000, '4 d 4 h'],
    [-6000, '-4 d 4 h'],
    [6001, '4 d 4 h 01'],
    [7199, '4 d 23 h 59'],
    [7200, '5 d'],
    [7205, '5 d 5 min'],
    [-7200, '-5 d'],
    [10_400, '7 d 5 h 20'],
  ])('%d is %s', (minutes, words) => {
    expect(durationText(minutes)).toBe(words);
  });

  it('mean the same whole minutes, read back', () => {
    const read = (words: string): number => {
      const found = /^(-?)(?:(\d+) d ?)?(?:(\d+) h ?)?(?:(\d+)(?: min)?)?$/.exec(words)!;
      const [, sign, days = 0, hours = 0, minutes = 0] = found;
      const size = Number(days) * 1440 + Number(hours) * 60 + Number(minutes);
      return sign === '-' ? -size : size;
    };
    fc.assert(
      fc.property(fc.integer({ min: -100_000, max: 100_000 }), (minutes) => {
        expect(read(durationText(minutes))).toBe(minutes);
      }),
      { numRuns: 1000 },
    );
  });
});

describe('elapsed minutes', () => {
  it('are the nearest whole ones, either way', () => {
    expect(minutesBetween(0, 100_000)).toBe(2);
    expect(minutesBetween(0, 80_000)).toBe(1);
    expect(minutesBetween(HOUR, 0)).toBe(-60);
    expect(lengthMinutes({ start: 0, end: 100_000 })).toBe(2);
    expect(lengthMinutes({ start: MINUTE, end: MINUTE + 80_000 })).toBe(1);
  });

  it('added lead to the moment that many away', () => {
    fc.assert(
      fc.property(fc.integer(), fc.integer({ min: -1e6, max: 1e6 }), (at, minutes) => {
        expect(minutesBetween(at, addMinutes(at, minutes))).toBe(minutes);
      }),
    );
  });
});
