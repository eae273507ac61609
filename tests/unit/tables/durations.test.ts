import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseDuration, type DurationUnit } from '../../../src/tables/parse/duration.js';

const good: [text: string, minutes: number, bare?: DurationUnit][] = [
  ['0', 0],
  ['90', 90],
  ['90.0', 90],
  ['1:30', 90],
  ['0:05', 5],
  ['27:00', 1620],
  ['1:30:00', 90],
  ['1 h 30', 90],
  ['1h30', 90],
  ['1h 30m', 90],
  ['1 hr 30 mins', 90],
  ['1 hour', 60],
  ['1.5 h', 90],
  ['1,5 h', 90],
  ['1.1 h', 66],
  ['90 min', 90],
  ['90m', 90],
  ['48 h', 2880],
  ['2 d', 2880],
  ['1d 4h 5m', 1685],
  ['PT1H30M', 90],
  ['P1DT2H', 1560],
  ['PT120S', 2],
  ['1.5', 90, 'hours'],
  ['2', 2880, 'days'],
  ['１５ min', 15],
];

const bad: [text: string, code: string][] = [
  ['', 'duration-not-read'],
  ['h', 'duration-not-read'],
  ['PT', 'duration-not-read'],
  ['P', 'duration-not-read'],
  ['1:60', 'duration-not-read'],
  ['1:30:30', 'duration-not-read'],
  ['about 90', 'duration-not-read'],
  ['12.5', 'duration-not-whole-minutes'],
  ['0.333 h', 'duration-not-whole-minutes'],
  ['PT30S', 'duration-not-whole-minutes'],
  ['-5', 'duration-negative'],
  ['−5 min', 'duration-negative'],
  ['1,500', 'number-reads-two-ways'],
  ['1,500 h', 'number-reads-two-ways'],
  ['999999999', 'duration-too-long'],
];

describe('a duration', () => {
  it.each(good)('"%s" is %i minutes', (text, minutes, bare) => {
    expect(parseDuration(text, bare)).toEqual({ value: minutes });
  });

  it.each(bad)('"%s" is refused as %s', (text, code) => {
    expect(parseDuration(text)).toMatchObject({ problem: { code } });
  });

  it('is read the same from each way of writing whole minutes', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 100_000 }), (minutes) => {
        const [hours, rest] = [Math.floor(minutes / 60), minutes % 60];
        const ways = [
          String(minutes),
          `${minutes} min`,
          `${hours}:${String(rest).padStart(2, '0')}`,
          `${hours} h ${rest}`,
          `PT${hours}H${rest}M`,
        ];
        for (const way of ways) expect(parseDuration(way)).toEqual({ value: minutes });
      }),
    );
  });
});
