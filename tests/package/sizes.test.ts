import { describe, expect, it } from 'vitest';
import { measure } from '../../scripts/sizes.mjs';

describe('what a page has to load', async () => {
  const measured = await measure();

  it('is measured for the engine and for the first paint', () => {
    expect(measured.map((item) => item.name)).toEqual([
      'engine',
      'first paint',
      'charts, loaded with the first',
      'ribbon, document and engine, until hours are shown',
      'bundle of windows, work and fit',
      'bundle of everything',
      'bundle of everything, with all that is loaded later but charts',
    ]);
    for (const item of measured) expect(item.bytes).toBeGreaterThan(10_000);
  });

  it.each(measured)('$name stays within $limit kB gzipped (aim $aim)', ({ bytes, limit, aim }) => {
    expect(bytes).toBeLessThanOrEqual(limit * 1000);
    expect(limit).toBeGreaterThanOrEqual(aim);
  });
});
