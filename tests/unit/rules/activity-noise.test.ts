// From the work to a dwelling's front, and what is said where there is no plant or no dwelling.
import { describe, expect, it } from 'vitest';
import { MINUTE } from '../../../src/calendar/index.js';
import type { NoiseSettings, PlantNoise } from '../../../src/model/index.js';
import { activityNoise, consentDates, predict } from '../../../src/rules/noise/index.js';
import { activity } from '../../helpers/plan-builders.js';
import { at, zone } from '../../helpers/clock.js';

const plant: PlantNoise[] = [
  { plant: 'Saw', levelDb: 90, resource: 'saw', source: 'this test', sureness: 'our own' },
];
const settings = (dwellings: readonly Partial<NoiseSettings['dwellings'][number]>[]) =>
  ({
    limits: {
      schema: 1,
      name: 'test',
      facade: false,
      periods: [
        {
          period: 'Night',
          bands: [{ from: '23:00', to: '07:00' }],
          limitDb: 60,
          source: 'this test',
          sureness: 'our own',
        },
      ],
    },
    dwellings: dwellings.map((dwelling, i) => ({
      name: `House ${i + 1}`,
      metres: 30,
      ground: 'hard',
      screeningDb: 0,
      ...dwelling,
    })),
    onTimePercent: 100,
    decisionDays: 28,
    talkDays: 0,
    asClosedTime: false,
  }) as NoiseSettings;
const saw = (extent?: readonly [number, number]) =>
  activity('A', 60, { resources: { saw: 1 }, ...(extent && { extent }) });
const metres = (extent: readonly [number, number] | undefined, chainage?: number): number =>
  activityNoise(saw(extent), settings([{ ...(chainage !== undefined && { chainage }) }]), plant)
    .dwellings[0]!.metres;

describe('the distance to a dwelling', () => {
  it('is straight across beside the work, and slanting beyond either end of it', () => {
    expect(metres([100, 200], 150)).toBe(30);
    expect(metres([100, 200], 100)).toBe(30);
    expect(metres([100, 200], 200)).toBe(30);
    expect(metres([100, 200], 240)).toBe(50);
    expect(metres([100, 200], 60)).toBe(50);
  });

  it('is straight across where either place is not known', () => {
    expect(metres(undefined, 240)).toBe(30);
    expect(metres([100, 200])).toBe(30);
  });
});

describe('noise of an activity', () => {
  it('is the worst of its dwellings, of one machine as of more', () => {
    const noise = activityNoise(saw(), settings([{ metres: 200 }, {}, { metres: 90 }]), plant);
    expect(noise.plant).toEqual([{ plant: 'Saw', count: 1 }]);
    expect(noise.worst.map((item) => item.dwelling)).toEqual(['House 2']);
    expect(noise.curfews).toHaveLength(1);
  });

  it('is none without a dwelling, and none without plant, whose names are told', () => {
    expect(activityNoise(saw(), settings([]), plant)).toMatchObject({
      dwellings: [],
      worst: [],
      curfews: [],
    });
    const silent = activityNoise(saw(), settings([{}]), []);
    expect(silent).toMatchObject({ notListed: ['saw'], dwellings: [], worst: [], curfews: [] });
  });
});

describe('machines of a prediction', () => {
  it.each([0, -1, 1.5, Number.NaN])('number at least one, whole: %d is refused', (count) => {
    const source = {
      plant: 'Saw',
      levelDb: 90,
      count,
      metres: 10,
      ground: 'hard',
      screeningDb: 0,
      onTimePercent: 100,
    } as const;
    expect(() => predict([source], { facade: false })).toThrow('machines of Saw');
    expect(() => predict([{ ...source, count: 1 }], { facade: false })).not.toThrow();
  });
});

describe('the dates of prior consent', () => {
  it('without days of talks are one', () => {
    const start = at('2027-05-01 23:00');
    const { applyBy, talkBy, state } = consentDates(start, at('2027-04-03 23:59'), { zone });
    expect(talkBy).toBe(applyBy);
    expect(state).toBe('in time');
    expect(consentDates(start, at('2027-04-04 00:00'), { zone }).state).toBe('too late');
    const talks = { zone, decisionDays: 28, talkDays: 7 };
    expect(consentDates(start, at('2027-03-28 00:00'), talks).state).toBe('too late for talks');
    expect(consentDates(start, at('2027-03-28 00:00') - MINUTE, talks).state).toBe('in time');
  });
});
