import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { HOUR, MINUTE } from '../../../src/calendar/index.js';
import { factorRuns, heldTrains } from '../../../src/price/index.js';
import { aBook, at, zone } from './builders.js';

/** Lets a clock run from handback on and sends the first waiting train off whenever the headway allows. */
function byTheClock(due: readonly number[], handback: number, headway: number): number[] {
  const left: number[] = [];
  let next = 0;
  for (let now = 0; next < due.length; now += 1) {
    while (next < due.length) {
      const waited = due[next]!;
      const gap = next === 0 ? 0 : Math.min(headway, waited - due[next - 1]!);
      const clear = next === 0 || now >= left[next - 1]! + gap;
      if (now < handback || now < waited || !clear) break;
      left.push(now);
      next += 1;
    }
  }
  return left;
}

describe('the queue behind a handback', () => {
  it('is what a clock gives that runs minute by minute', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 0, max: 120 }), { maxLength: 15 }),
        fc.integer({ min: 0, max: 90 }),
        fc.integer({ min: 0, max: 12 }),
        (minutes, handback, headwayMinutes) => {
          const due = minutes.sort((a, b) => a - b);
          const held = heldTrains(
            due.map((m, i) => ({ id: `T${i}`, passesAt: m * MINUTE, weight: 1 })),
            handback * MINUTE,
            { headwayMinutes, cancelledTrains: 'keep-path' },
          );
          const late = new Map(held.map((train) => [train.train, train.minutesLate]));
          const expected = byTheClock(due, handback, headwayMinutes).map((m, i) => m - due[i]!);
          expect(due.map((_, i) => late.get(`T${i}`) ?? 0)).toEqual(expected);
        },
      ),
      { numRuns: 500 },
    );
  });
});

describe('pay factors by the local clock', () => {
  // Another clock than the one under test: the platform's own.
  const platform = new Intl.DateTimeFormat('en-GB', {
    timeZone: zone,
    hourCycle: 'h23',
    hour: '2-digit',
    minute: '2-digit',
    weekday: 'short',
  });
  const shown = (ms: number): { minute: number; day: string } => {
    const parts = Object.fromEntries(platform.formatToParts(ms).map((p) => [p.type, p.value]));
    return { minute: Number(parts['hour']) * 60 + Number(parts['minute']), day: parts['weekday']! };
  };

  it('holds a band for exactly the minutes that show a time in it, clock changes included', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('2027-03-27 20:00', '2027-10-30 20:00', '2027-05-12 20:00'),
        fc.integer({ min: 0, max: 600 }),
        fc.integer({ min: 0, max: 1439 }),
        fc.integer({ min: 0, max: 1439 }),
        (from, offset, bandFrom, bandTo) => {
          const clock = (m: number): string =>
            `${String(Math.floor(m / 60)).padStart(2, '0')}:${String(m % 60).padStart(2, '0')}`;
          const start = at(from) + offset * MINUTE;
          const { standing } = aBook({
            standing: {
              factors: [{ name: 'b', factor: '2', from: clock(bandFrom), to: clock(bandTo) }],
            },
          });
          const runs = factorRuns(start, 720, zone, standing!, true, []);
          const found = runs
            .filter((run) => run.factor === '2')
            .reduce((sum, run) => sum + run.toMinute - run.fromMinute, 0);
          let expected = 0;
          for (let m = 0; m < 720; m += 1) {
            const { minute } = shown(start + m * MINUTE);
            if (
              bandFrom < bandTo
                ? minute >= bandFrom && minute < bandTo
                : minute >= bandFrom || minute < bandTo
            )
              expected += 1;
          }
          expect(found).toBe(expected);
        },
      ),
      { numRuns: 60 },
    );
  });

  it('covers the stretch without a gap or an overlap', () => {
    const { standing } = aBook({
      standing: {
        factors: [
          { name: 'night', factor: '1.5', from: '22:00', to: '06:00' },
          { name: 'Sunday', factor: '2', days: ['sun'] },
        ],
      },
    });
    const start = at('2027-10-30 20:00');
    const runs = factorRuns(start, 48 * 60, zone, standing!, true, []);
    expect(runs.map((run) => [run.fromMinute, run.toMinute, run.factor])).toEqual([
      [0, 120, '1'],
      [120, 240, '1.5'],
      // Sunday has 25 hours; its night hours are at its own factor, the higher.
      [240, 1740, '2'],
      [1740, 2100, '1.5'],
      [2100, 2880, '1'],
    ]);
    expect(shown(start + 1740 * MINUTE)).toEqual({ minute: 0, day: 'Mon' });
    expect(at('2027-11-01 00:00') - at('2027-10-31 00:00')).toBe(25 * HOUR);
  });
});
