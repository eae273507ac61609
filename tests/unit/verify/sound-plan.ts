import { cutTo } from './cut-to.js';
import { ruleSetSchema, type Activity, type Plan } from '../../../src/model/index.js';
import { at } from '../../helpers/clock.js';
import { activity, resource } from '../../helpers/plan-builders.js';

const zone = 'Europe/London';

const night = (
  id: string,
  start: string,
  end: string,
  more: Partial<Plan['windows'][number]> = {},
): Plan['windows'][number] => ({
  id,
  title: '',
  start: at(start),
  end: at(end),
  zone,
  lines: ['up', 'down'],
  extent: { from: 0, to: 5000 },
  isolation: [{ section: 'S1' }],
  status: 'confirmed',
  trainsAfter: '',
  ...more,
});

/** An activity on the Up with everything that the builder does not know. */
const work = (
  id: string,
  minutes: number,
  more: Parameters<typeof activity>[2],
  rest: Partial<Activity> = {},
): Activity => ({ ...activity(id, minutes, { lines: ['up'], ...more }), ...rest });

/**
 * A plan in which every rule has something to bite on: the night on which clocks go forward, a night before and after, and
 * one that is withdrawn.
 */
export const soundPlan: Plan = {
  zone,
  windows: [
    night('W1', '2027-03-26 22:00', '2027-03-27 06:00'),
    night('W2', '2027-03-27 22:00', '2027-03-28 09:00'),
    night('W3', '2027-04-03 22:00', '2027-04-04 07:00', {
      isolation: [
        { section: 'S1', during: [{ start: at('2027-04-03 23:30'), end: at('2027-04-04 05:00') }] },
      ],
    }),
    night('X', '2027-04-10 22:00', '2027-04-11 06:00', { status: 'withdrawn' }),
  ],
  activities: [
    work(
      'cut',
      60,
      { package: 'P', extent: [100, 200], resources: { crane: 1 } },
      { madeGoodBy: ['test'], occupies: 'alone' },
    ),
    work('lay', 90, { package: 'P', after: ['cut'], extent: [100, 200], resources: { crane: 1 } }),
    work('test', 30, { package: 'P', after: ['lay + 15'], extent: [100, 200] }),
    work('weld', 120, {
      package: 'Q',
      extent: [1000, 1200],
      resources: { gang: 1 },
      loud: true,
      window: 'W2',
    }),
    work(
      'grind',
      45,
      { package: 'Q', after: ['weld + 480'], extent: [1000, 1200], resources: { gang: 1 } },
      { keyDate: at('2027-04-04 12:00') },
    ),
    work(
      'wire',
      100,
      {
        package: 'R',
        extent: [2000, 2500],
        isolation: ['S1'],
        resources: { gang: 1 },
        window: 'W3',
      },
      { occupies: 'shared' },
    ),
    work(
      'poles',
      0,
      {
        package: 'R',
        units: [10, 50, 20, 10],
        done: 2,
        extent: [3000, 4000],
        resources: { gang: 1 },
      },
      { keyDate: at('2027-03-30 12:00') },
    ),
    work('clip', 60, { package: 'S', extent: [4200, 4400] }, { notBefore: at('2027-03-27 12:00') }),
    work('far', 60, { package: 'S', extent: [9000, 9100] }),
    {
      ...work('yard', 120, { package: 'T', place: 'outside', lines: [] }),
      notBefore: at('2027-03-26 23:00'),
    },
  ],
  resources: [
    cutTo(resource('crane', [{ capacity: 1 }]), at('2027-03-26 12:00'), at('2027-03-29 12:00')),
    {
      id: 'gang',
      availability: [{ capacity: 1, dailyFromMinute: 20 * 60, dailyToMinute: 8 * 60 }],
    },
  ],
  rules: ruleSetSchema.parse({
    schema: 1,
    name: 'Sound',
    leadIn: [
      { step: 'Take the line', minutes: 30 },
      { step: 'Set up', minutes: 20 },
      { step: 'Isolate', minutes: 40, when: 'isolation', alongside: 'Set up' },
    ],
    leadOut: [
      { step: 'Clear', minutes: 20 },
      { step: 'Remove earths', minutes: 15, when: 'isolation' },
    ],
    margin: { minutes: 30 },
    curfews: [{ name: 'Quiet', bars: 'loud', from: '23:00', to: '05:00', days: ['sat', 'sun'] }],
  }),
};
