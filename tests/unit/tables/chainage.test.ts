import { describe, expect, it } from 'vitest';
import { parseChainage, type ChainageUnit } from '../../../src/tables/parse/chainage.js';

// The yard is 0.9144 m by definition, a chain 22 yards, a mile 80 chains or 1760 yards: worked by hand.
const good: [text: string, metres: number, bare?: ChainageUnit][] = [
  ['0', 0],
  ['1234', 1234],
  ['1234 m', 1234],
  ['12m', 12],
  ['-120 m', -120],
  ['1.2 km', 1200],
  ['1,25 km', 1250],
  ['1 km 200 m', 1200],
  ['1 km 200', 1200],
  ['1 mi', 1609.344],
  ['12.5 mi', 20116.8],
  ['12m 34ch', 19996.0992],
  ['12 mi 34 ch', 19996.0992],
  ['12m34c', 19996.0992],
  ['12 miles 0 chains', 19312.128],
  ['12m 79ch', 20901.3552],
  ['12m 340y', 19623.024],
  ['12 mi 1759 yds', 20920.5576],
  ['34 ch', 683.9712],
  ['5', 5000, 'km'],
  ['5', 8046.72, 'mi'],
  ['5 m', 5, 'km'],
];

describe('a place along the line', () => {
  it.each(good)('"%s" is %d m', (text, metres, bare) => {
    expect(parseChainage(text, bare)).toEqual({ value: metres });
  });

  it.each([
    '',
    '12 furlongs',
    '12m 80ch',
    '12m 1760y',
    '1 km 1000 m',
    '12.5 mi 3 ch',
    'by the bridge',
    '1 2',
  ])('"%s" is refused', (text) => {
    expect(parseChainage(text)).toMatchObject({ problem: { code: 'chainage-not-read' } });
  });

  it('with a comma before three digits is refused, as it can mean two places', () => {
    expect(parseChainage('1,234')).toMatchObject({ problem: { code: 'number-reads-two-ways' } });
  });
});
