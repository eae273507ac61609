import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  contains,
  covers,
  intersect,
  intersectionOf,
  interval,
  lengthMinutes,
  MINUTE,
  overlaps,
  subtract,
  totalMinutes,
  unionOf,
  type Interval,
  type IntervalSet,
} from '../../../src/calendar/index.js';

const SIZE = 120;
const at = (start: number, end: number): Interval => ({ start: start * MINUTE, end: end * MINUTE });
/** Any intervals: empty ones, touching ones, in any order. */
const intervals = fc.array(
  fc.tuple(fc.nat(SIZE), fc.nat(SIZE)).map(([a, b]) => at(Math.min(a, b), Math.max(a, b))),
  { maxLength: 12 },
);
const sets = intervals.map(unionOf);
/** The naive picture of a set: one truth a minute. */
const picture = (list: readonly Interval[]): boolean[] =>
  Array.from({ length: SIZE }, (_, minute) =>
    list.some((item) => item.start <= minute * MINUTE && minute * MINUTE < item.end),
  );
const isSet = (set: IntervalSet): boolean =>
  set.every((item, i) => item.end > item.start && (i === 0 || set[i - 1]!.end < item.start));

describe('an interval', () => {
  it('is half-open: two that touch share no moment', () => {
    expect(overlaps(at(0, 10), at(10, 20))).toBe(false);
    expect(overlaps(at(0, 11), at(10, 20))).toBe(true);
    expect(intersectionOf(at(0, 10), at(10, 20))).toBeUndefined();
    expect(intersectionOf(at(0, 11), at(10, 20))).toEqual(at(10, 11));
  });

  it('contains itself and whatever starts and ends within it', () => {
    expect(contains(at(0, 10), at(0, 10))).toBe(true);
    expect(contains(at(0, 10), at(0, 11))).toBe(false);
  });

  it('refuses to end before it starts, and may be empty', () => {
    expect(() => interval(2, 1)).toThrow(RangeError);
    expect(() => interval(0, Number.NaN)).toThrow(RangeError);
    expect(lengthMinutes(interval(5, 5))).toBe(0);
  });
});

describe('a set of intervals', () => {
  it('holds the minutes of any of its intervals, in order, none touching the next', () => {
    fc.assert(
      fc.property(intervals, (list) => {
        const set = unionOf(list);
        expect(isSet(set)).toBe(true);
        expect(picture(set)).toEqual(picture(list));
      }),
    );
  });

  it('shares with another just the minutes that are in both', () => {
    fc.assert(
      fc.property(sets, sets, (a, b) => {
        const both = intersect(a, b);
        const inB = picture(b);
        expect(isSet(both)).toBe(true);
        expect(picture(both)).toEqual(picture(a).map((inA, i) => inA && inB[i]!));
      }),
    );
  });

  it('less another leaves just the minutes that are in the first alone', () => {
    fc.assert(
      fc.property(sets, sets, (a, b) => {
        const left = subtract(a, b);
        const inB = picture(b);
        expect(isSet(left)).toBe(true);
        expect(picture(left)).toEqual(picture(a).map((inA, i) => inA && !inB[i]!));
      }),
    );
  });

  it('keeps the laws of sets', () => {
    fc.assert(
      fc.property(sets, sets, sets, (a, b, c) => {
        expect(unionOf([...a, ...b])).toEqual(unionOf([...b, ...a]));
        expect(intersect(a, b)).toEqual(intersect(b, a));
        expect(intersect(a, unionOf([...b, ...c]))).toEqual(
          unionOf([...intersect(a, b), ...intersect(a, c)]),
        );
        expect(subtract(a, unionOf([...b, ...c]))).toEqual(
          intersect(subtract(a, b), subtract(a, c)),
        );
        expect(unionOf([...intersect(a, b), ...subtract(a, b)])).toEqual(a);
        expect(intersect(subtract(a, b), b)).toEqual([]);
      }),
    );
  });

  it('counts each minute once', () => {
    fc.assert(
      fc.property(intervals, (list) => {
        expect(totalMinutes(unionOf(list))).toBe(picture(list).filter(Boolean).length);
      }),
    );
  });

  it('covers a moment unless it is an end', () => {
    const set = unionOf([at(0, 10), at(20, 30)]);
    expect([0, 9, 10, 20, 30].map((minute) => covers(set, minute * MINUTE))).toEqual([
      true,
      true,
      false,
      true,
      false,
    ]);
  });
});
