import { expect, it } from 'vitest';
import { createInlineEngine } from '../../../src/engine/index.js';
import { emptyDocument } from '../../helpers/sample.js';
import { aBook } from '../price/builders.js';

// Constructed from the clock changes alone: Friday 22:00 to Monday 10:00 is 60 h, 61 h in October, 59 h in March.
it('tells the clock-change trap of a length threshold', async () => {
  const engine = createInlineEngine();
  const csv =
    'window,start,end\nMAY,2027-05-07 22:00,2027-05-10 10:00\nOCT,2027-10-29 22:00,2027-11-01 10:00\nMAR,2027-03-26 22:00,2027-03-29 10:00\n';
  const file = { name: 'windows.csv', bytes: new TextEncoder().encode(csv) };
  const { document } = await engine.importFiles([file], emptyDocument);
  const lengths = [{ code: 'long', name: 'More than 60 h', moreThanHours: 60 }];
  const told = async (window: string, overrunMinutes = 0) => {
    const { lengths: found } = await engine.price(
      { ...document, prices: aBook({ lengths }) },
      { window, overrunMinutes, maxMinutes: 90 },
    );
    return [found![0]!.exceeded, found![0]!.clockChangeDecides];
  };
  expect(await told('MAY')).toEqual([false, false]);
  expect(await told('MAY', 1)).toEqual([true, false]);
  expect(await told('OCT')).toEqual([true, true]);
  expect(await told('MAR', 60)).toEqual([false, true]);
});
