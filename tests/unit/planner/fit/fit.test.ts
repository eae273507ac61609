import { describe, expect, it } from 'vitest';
import { MINUTE } from '../../../../src/calendar/index.js';
import { fitAll, fitOne, type Reason } from '../../../../src/planner/fit/index.js';
import { oracle } from '../../../helpers/oracle.js';
import { activity, plan, resource, rules, window } from '../../../helpers/plan-builders.js';
import { randomPlan } from '../../../helpers/random-plan.js';
import { inJson } from '../../../helpers/in-json.js';

const cases = Number(process.env['FIT_CASES'] ?? 120);
const codes = (reasons: readonly Reason[]): string[] => reasons.map((reason) => reason.code).sort();

describe('fitOne', () => {
  it('fits to the minute and tells the usable minutes that are left', () => {
    const one = (minutes: number) =>
      fitOne(
        plan({
          windows: [window('P1', 0, 480)],
          activities: [activity('A1', minutes)],
          rules: rules({ leadIn: 30, leadOut: 20, margin: 45 }),
        }),
        'W1',
        'P1',
      );
    expect(one(385)).toMatchObject({ fits: true, spareMinutes: 0, reasons: [] });
    expect(one(300)).toMatchObject({ fits: true, spareMinutes: 85 });
    expect(one(386)).toMatchObject({ fits: false, spareMinutes: -1 });
    expect(one(300).placements).toEqual([
      { activity: 'A1', window: 'P1', from: 30 * MINUTE, to: 330 * MINUTE },
    ]);
  });

  it('says by how much a window is too short, when it would have to end and what to leave out', () => {
    const verdict = fitOne(
      plan({
        windows: [window('P1', 0, 500)],
        activities: [activity('A1', 0, { units: [8, 60, 60, 40] })],
      }),
      'W1',
      'P1',
    );
    expect(verdict.spareMinutes).toBe(-80);
    expect(inJson(verdict.reasons)).toEqual([
      {
        code: 'too-short',
        text: 'short by 1 h 20; fits if the end moves to 09:40, or if 2 of 8 units are left out (A1)',
        shortByMinutes: 80,
      },
    ]);
  });

  it('gives every reason at once', () => {
    const verdict = fitOne(
      plan({
        windows: [
          window('P1', 0, 240, { lines: ['up'], extent: [0, 500], status: 'withdrawn' }),
          window('P2', 1440, 240),
        ],
        activities: [
          activity('A1', 300, {
            lines: ['down'],
            extent: [400, 900],
            isolation: ['S1'],
            window: 'P2',
            resources: { crane: 2, gang: 1 },
          }),
        ],
        resources: [
          resource('crane', [{ capacity: 1 }]),
          resource('gang', [{ capacity: 1, from: 5000 }]),
        ],
      }),
      'W1',
      'P1',
    );
    expect(verdict).toMatchObject({ fits: false, spareMinutes: null });
    expect(codes(verdict.reasons)).toEqual([
      'fixed-elsewhere',
      'isolation-not-booked',
      'lines-not-blocked',
      'outside-extent',
      'resource-not-there',
      'resource-short',
      'too-short',
      'withdrawn',
    ]);
  });

  it('counts the steps that isolate where a window does not book what must be dead', () => {
    // By hand: 20 min of protection, then 60 that isolate, 100 of work, 40 to take earths off; 220 in all.
    const steps = {
      leadIn: [
        { step: 'Protect', minutes: 20, when: 'always' as const },
        { step: 'Isolate', minutes: 60, when: 'isolation' as const },
      ],
      leadOut: [{ step: 'Earths off', minutes: 40, when: 'isolation' as const }],
    };
    const within = (minutes: number, isolation: string[]) =>
      fitOne(
        plan({
          windows: [window('P1', 0, minutes, { isolation })],
          activities: [activity('A1', 100, { isolation: ['S1'] })],
          rules: { ...rules({}), ...steps },
        }),
        'W1',
        'P1',
      );
    // Long enough without the steps, not with them: to book it is not all that is missing.
    for (const minutes of [90, 150, 219]) {
      const [booked, not] = [within(minutes, ['S1']), within(minutes, [])];
      expect(not.reasons.map((reason) => reason.code)).toEqual([
        'isolation-not-booked',
        'too-short',
      ]);
      expect(not.reasons[1]!.shortByMinutes).toBe(220 - minutes);
      expect(booked.reasons[0]!.shortByMinutes).toBe(220 - minutes);
    }
    expect(within(220, ['S1']).fits).toBe(true);
    expect(codes(within(220, []).reasons)).toEqual(['isolation-not-booked']);
  });

  it('names the curfew that breaks a window into stretches that are too short', () => {
    const verdict = fitOne(
      plan({
        windows: [window('P1', 0, 360)],
        activities: [activity('A1', 200, { loud: true })],
        rules: rules({ curfews: [{ name: 'Quiet', bars: 'loud', from: '02:00', to: '03:00' }] }),
      }),
      'W1',
      'P1',
    );
    expect(codes(verdict.reasons)).toEqual(['no-usable-stretch', 'too-short']);
    expect(verdict.reasons.find((reason) => reason.code === 'no-usable-stretch')!.text).toContain(
      'Quiet',
    );
    expect(verdict.reasons.find((reason) => reason.code === 'too-short')!.shortByMinutes).toBe(20);
  });

  it('stops repeated work at a curfew and pays set up and make safe again', () => {
    const verdict = fitOne(
      plan({
        windows: [window('P1', 0, 360)],
        activities: [activity('A1', 0, { units: [4, 40, 20, 10], loud: true })],
        rules: rules({ curfews: [{ name: 'Quiet', bars: 'loud', from: '02:00', to: '03:00' }] }),
      }),
      'W1',
      'P1',
    );
    expect(verdict.fits).toBe(true);
    expect(
      verdict.placements.map((placement) => [
        placement.from / MINUTE,
        placement.to / MINUTE,
        placement.units,
      ]),
    ).toEqual([
      [0, 110, 2],
      [180, 290, 2],
    ]);
    expect(verdict.spareMinutes).toBe(70);
  });

  it('tells of dates that come too late and too soon', () => {
    const verdict = (more: Parameters<typeof activity>[2]) =>
      fitOne(
        plan({ windows: [window('P1', 600, 240)], activities: [activity('A1', 120, more)] }),
        'W1',
        'P1',
      );
    expect(codes(verdict({ notBefore: 2000 }).reasons)).toContain('not-before');
    expect(codes(verdict({ keyDate: 700 }).reasons)).toEqual(['key-date']);
    expect(verdict({ keyDate: 720 }).fits).toBe(true);
    expect(verdict({ notBefore: 720 }).fits).toBe(true);
  });

  it('says so when nothing is left to do', () => {
    const verdict = fitOne(
      plan({
        windows: [window('P1', 0, 240)],
        activities: [activity('A1', 0, { units: [0, 40, 0, 0], done: 3 })],
      }),
      'W1',
      'P1',
    );
    expect(codes(verdict.reasons)).toEqual(['nothing-left']);
  });

  it('lets outside work be ready before the window and counts curing by the clock', () => {
    const verdict = fitOne(
      plan({
        windows: [window('P1', 0, 300)],
        activities: [
          activity('A1', 600, { place: 'outside' }),
          activity('A2', 100, { after: ['A1'] }),
          activity('A3', 100, { after: ['A2 + 100'] }),
        ],
      }),
      'W1',
      'P1',
    );
    expect(verdict).toMatchObject({ fits: true, spareMinutes: 0 });
  });

  it('refuses a package or a window that the plan has not', () => {
    const one = plan({ windows: [window('P1', 0, 60)], activities: [activity('A1', 10)] });
    expect(() => fitOne(one, 'W9', 'P1')).toThrow(RangeError);
    expect(() => fitOne(one, 'W1', 'P9')).toThrow(RangeError);
  });

  it('agrees with the plain search on yes, no and the shortest extension in random plans', () => {
    let yes = 0;
    let short = 0;
    for (let seed = 1; seed <= cases; seed += 1) {
      const { plan: document, step } = randomPlan(seed);
      for (const verdict of fitAll(document)) {
        const activities = document.activities.filter((item) => item.package === verdict.package);
        const booked = document.windows.find((item) => item.id === verdict.window)!;
        const fits = (longerBy: number): boolean => {
          const alone = { ...booked, end: booked.end + longerBy * MINUTE };
          const best = oracle(
            { ...document, windows: [alone], activities },
            ['key-dates', 'finish', 'fewest-windows'],
            step,
          );
          return best.unplaced === 0 && best.values['key-dates'] === 0;
        };
        const left = activities.some(
          (item) => item.work.kind === 'whole' || item.work.done < item.work.units,
        );
        if (!left) continue;
        expect({ seed, ...verdict, fits: booked.status !== 'withdrawn' && fits(0) }).toEqual({
          seed,
          ...verdict,
        });
        if (verdict.fits) yes += 1;
        else if (verdict.spareMinutes !== null && -verdict.spareMinutes <= 6 * step) {
          const by = -verdict.spareMinutes;
          expect({ seed, by, before: fits(by - step), after: fits(by) }).toEqual({
            seed,
            by,
            before: false,
            after: true,
          });
          short += 1;
        }
      }
    }
    expect(yes).toBeGreaterThan(30);
    expect(short).toBeGreaterThan(10);
  });
});
