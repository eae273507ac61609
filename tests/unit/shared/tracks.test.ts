import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { evenPlaces, placesWith, Tracks } from '../../../components/shared/tracks.js';

const sizes = fc.array(fc.integer({ min: 1, max: 90 }), { minLength: 1, maxLength: 60 });

describe('rows of any height', () => {
  it('finds the rows between two pixels as a look at each of them would', () => {
    fc.assert(
      fc.property(sizes, fc.integer(), fc.integer(), (heights, value, other) => {
        const tracks = new Tracks(heights);
        const within = (n: number): number => Math.abs(n) % (tracks.total + 1);
        const [from, to] = [within(value), within(other)].sort((a, b) => a - b) as [number, number];
        const { first, end } = tracks.between(from, to);
        const seen = heights.flatMap((height, at) => {
          const start = heights.slice(0, at).reduce((sum, size) => sum + size, 0);
          return start < to && start + height > from && to > from ? [at] : [];
        });
        expect(Array.from({ length: end - first }, (_, at) => first + at)).toEqual(seen);
      }),
    );
  });

  it('puts each row where those before it end', () => {
    const tracks = new Tracks([30, 58, 30]);
    expect([0, 1, 2].map((place) => [tracks.start(place), tracks.size(place)])).toEqual([
      [0, 30],
      [30, 58],
      [88, 30],
    ]);
    expect(tracks.total).toBe(118);
  });

  it('finds the first and the last beyond the ends, and none where there are none', () => {
    const tracks = new Tracks([30, 30]);
    expect(tracks.between(-500, 10)).toEqual({ first: 0, end: 1 });
    expect(tracks.between(50, 900)).toEqual({ first: 1, end: 2 });
    expect(new Tracks([]).between(0, 900)).toEqual({ first: 0, end: 0 });
  });
});

describe('rows of one height', () => {
  it('are found as those of any height are', () => {
    fc.assert(
      fc.property(
        fc.nat(60),
        fc.nat(3_000),
        fc.integer({ min: 1, max: 900 }),
        (count, from, high) => {
          fc.pre(count > 0 && from + high <= count * 30);
          const tracks = new Tracks(Array.from({ length: count }, () => 30));
          expect(evenPlaces(from, from + high, 30, count, 0)).toEqual(
            tracks.between(from, from + high),
          );
        },
      ),
    );
  });

  it('come with more at either end, as far as there are any', () => {
    expect(evenPlaces(300, 600, 30, 100, 4)).toEqual({ first: 6, end: 24 });
    expect(evenPlaces(0, 90, 30, 5, 4)).toEqual({ first: 0, end: 5 });
    expect(evenPlaces(9_000, 9_300, 30, 5, 4)).toEqual({ first: 5, end: 5 });
  });
});

describe('places with one that is kept', () => {
  it('holds it once, in its order, and only where there is such a place', () => {
    const part = { first: 4, end: 7 };
    expect(placesWith(part, 1, 20)).toEqual([1, 4, 5, 6]);
    expect(placesWith(part, 5, 20)).toEqual([4, 5, 6]);
    expect(placesWith(part, 19, 20)).toEqual([4, 5, 6, 19]);
    expect(placesWith(part, -1, 20)).toEqual([4, 5, 6]);
    expect(placesWith(part, 20, 20)).toEqual([4, 5, 6]);
  });
});
