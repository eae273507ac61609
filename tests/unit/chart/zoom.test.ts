import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { holding, nearer, wider, type Span } from '../../../components/chart/zoom.js';

const whole: Span = [0, 100];

describe('the part of a scale that is looked at', () => {
  it('is half as long about a place, and stays within the whole', () => {
    expect(nearer(whole, whole, 50)).toEqual([25, 75]);
    expect(nearer(whole, whole, 10)).toEqual([0, 50]);
    expect(nearer(whole, whole, 95)).toEqual([50, 100]);
  });

  it('is twice as long about its middle, up to the whole', () => {
    expect(wider([25, 75], whole)).toEqual(whole);
    expect(wider([40, 60], whole)).toEqual([30, 70]);
    expect(wider([0, 20], whole)).toEqual([0, 40]);
  });

  it('moves as little as holds a place', () => {
    expect(holding([20, 40], whole, 30)).toEqual([20, 40]);
    expect(holding([20, 40], whole, 45)).toEqual([25, 45]);
    expect(holding([20, 40], whole, 0)).toEqual([0, 20]);
  });

  it('never leaves the whole and never loses the place, whatever is pressed', () => {
    const press = fc.record({
      key: fc.constantFrom('+', '-', 'to'),
      at: fc.integer({ min: 0, max: 100 }),
    });
    fc.assert(
      fc.property(fc.array(press, { maxLength: 30 }), (presses) => {
        let span: Span = whole;
        for (const { key, at } of presses) {
          const middle = (span[0] + span[1]) / 2;
          span =
            key === '+'
              ? nearer(span, whole, middle)
              : key === '-'
                ? wider(span, whole)
                : holding(span, whole, at);
          expect(span[0]).toBeGreaterThanOrEqual(-1e-9);
          expect(span[1]).toBeLessThanOrEqual(100 + 1e-9);
          expect(span[1]).toBeGreaterThan(span[0]);
          if (key === 'to') {
            expect(at).toBeGreaterThanOrEqual(span[0] - 1e-9);
            expect(at).toBeLessThanOrEqual(span[1] + 1e-9);
          }
        }
      }),
    );
  });
});
