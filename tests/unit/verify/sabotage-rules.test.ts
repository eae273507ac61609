// The search given other rules, another calendar or other data than the check: what it then makes is found to break the
// real ones. So a fault in the ledger, the clocks or the reading of the plan cannot hide behind the search.
import { describe, expect, it } from 'vitest';
import { ruleSetSchema, type Activity, type Plan } from '../../../src/model/index.js';
import { allocate } from '../../../src/planner/search/index.js';
import { verify } from '../../../src/verify/index.js';
import { at } from '../../helpers/clock.js';
import { activity } from '../../helpers/plan-builders.js';

const zone = 'Europe/London';

interface Night {
  readonly start: string;
  readonly end: string;
  readonly rules?: object;
  /** By id: minutes, and what else. */
  readonly work: readonly Activity[];
  readonly more?: Partial<Plan>;
  readonly window?: Partial<Plan['windows'][number]>;
}

function planOf({ start, end, rules = {}, work, more, window }: Night): Plan {
  return {
    zone,
    windows: [
      {
        id: 'W',
        title: '',
        start: at(start),
        end: at(end),
        zone,
        lines: [],
        isolation: [],
        status: 'confirmed',
        trainsAfter: '',
        ...window,
      },
    ],
    activities: work,
    resources: [],
    rules: ruleSetSchema.parse({ schema: 1, name: 'Real', ...rules }),
    ...more,
  };
}

const summer = { start: '2027-06-11 22:00', end: '2027-06-12 06:00' };
const spring = { start: '2027-03-27 22:00', end: '2027-03-28 09:00' };
const autumn = { start: '2027-10-30 22:00', end: '2027-10-31 09:00' };
const step = (name: string, minutes: number, more: object = {}): object => ({
  step: name,
  minutes,
  ...more,
});
const loud = (minutes: number): Activity => activity('A', minutes, { loud: true });
const live = (minutes: number): Activity => activity('A', minutes, { isolation: ['S'] });
const plain = (minutes: number): Activity => activity('A', minutes);
const first = (plan: Plan): Plan['windows'][number] => plan.windows[0]!;
const changedWindow = (plan: Plan, change: Partial<Plan['windows'][number]>): Plan => ({
  ...plan,
  windows: [{ ...first(plan), ...change }],
});
const changedRules = (plan: Plan, change: object): Plan => ({
  ...plan,
  rules: { ...plan.rules, ...change },
});
const changedWork = (plan: Plan, id: string, by: (item: Activity) => Activity): Plan => ({
  ...plan,
  activities: plan.activities.map((item) => (item.id === id ? by(item) : item)),
});
const section = (from: string, to: string): Partial<Plan['windows'][number]> => ({
  isolation: [{ section: 'S', during: [{ start: at(from), end: at(to) }] }],
});
const quiet = (from: string, to: string, days?: readonly string[]): object => ({
  curfews: [{ name: 'Quiet', bars: 'loud', from, to, ...(days && { days }) }],
});

const ways: readonly (readonly [string, string, Plan, (plan: Plan) => Plan])[] = [
  [
    'a lead-in a minute short',
    'lead-in',
    planOf({ ...summer, rules: { leadIn: [step('Take the line', 30)] }, work: [plain(60)] }),
    (plan) => changedRules(plan, { leadIn: [step('Take the line', 29, { when: 'always' })] }),
  ],
  [
    'a lead-out a minute short',
    'lead-out',
    planOf({ ...summer, rules: { leadOut: [step('Give it back', 30)] }, work: [plain(451)] }),
    (plan) => changedRules(plan, { leadOut: [step('Give it back', 29, { when: 'always' })] }),
  ],
  [
    'the margin dropped',
    'margin',
    planOf({ ...summer, rules: { margin: { minutes: 45 } }, work: [plain(480)] }),
    (plan) => changedRules(plan, { margin: { minutes: 0 } }),
  ],
  [
    'a step that goes alongside though it follows',
    'lead-in',
    planOf({
      ...summer,
      rules: { leadIn: [step('Protect', 30), step('Set up', 25)] },
      work: [plain(60)],
    }),
    (plan) =>
      changedRules(plan, {
        leadIn: [
          step('Protect', 30, { when: 'always' }),
          step('Set up', 25, { when: 'always', alongside: 'Protect' }),
        ],
      }),
  ],
  [
    'a step alongside that ends with the other, though it is longer',
    'lead-in',
    planOf({
      ...summer,
      rules: { leadIn: [step('Protect', 30), step('Set up', 50, { alongside: 'Protect' })] },
      work: [plain(60)],
    }),
    (plan) =>
      changedRules(plan, {
        leadIn: [
          step('Protect', 30, { when: 'always' }),
          step('Set up', 30, { when: 'always', alongside: 'Protect' }),
        ],
      }),
  ],
  [
    'an isolation step of the lead-in ignored',
    'lead-in',
    planOf({
      ...summer,
      rules: { leadIn: [step('Isolate', 45, { when: 'isolation' })] },
      window: { isolation: [{ section: 'S' }] },
      work: [live(60)],
    }),
    (plan) => changedRules(plan, { leadIn: [] }),
  ],
  [
    'an isolation step of the lead-out ignored',
    'lead-out',
    planOf({
      ...summer,
      rules: { leadOut: [step('Earths off', 20, { when: 'isolation' })] },
      window: { isolation: [{ section: 'S' }] },
      work: [live(480)],
    }),
    (plan) => changedRules(plan, { leadOut: [] }),
  ],
  [
    'the start of an isolation ignored',
    'lead-in',
    planOf({
      ...summer,
      window: section('2027-06-11 23:30', '2027-06-12 05:00'),
      work: [live(60)],
    }),
    (plan) => changedWindow(plan, { isolation: [{ section: 'S' }] }),
  ],
  [
    'an isolation step that does not wait for its section',
    'lead-in',
    planOf({
      ...summer,
      rules: { leadIn: [step('Isolate', 40, { when: 'isolation' })] },
      window: section('2027-06-11 23:30', '2027-06-12 05:00'),
      work: [live(60)],
    }),
    (plan) => changedWindow(plan, section('2027-06-11 23:00', '2027-06-12 05:00')),
  ],
  [
    'the end of an isolation ignored',
    'lead-out',
    planOf({
      ...summer,
      window: section('2027-06-11 22:00', '2027-06-12 05:00'),
      work: [live(430)],
    }),
    (plan) => changedWindow(plan, { isolation: [{ section: 'S' }] }),
  ],
  [
    'a section that is not booked',
    'isolation',
    planOf({ ...summer, work: [live(60)] }),
    (plan) => changedWindow(plan, { isolation: [{ section: 'S' }] }),
  ],
  [
    'a curfew that ends a minute early',
    'curfew',
    planOf({ ...summer, rules: quiet('21:00', '00:30'), work: [loud(60)] }),
    (plan) => changedRules(plan, quiet('21:00', '00:29')),
  ],
  [
    'a curfew on the wrong day',
    'curfew',
    planOf({ ...summer, rules: quiet('21:00', '00:30', ['fri']), work: [loud(60)] }),
    (plan) => changedRules(plan, quiet('21:00', '00:30', ['sat'])),
  ],
  [
    'a curfew over midnight that belongs to the day it ends on',
    'curfew',
    planOf({ ...summer, rules: quiet('23:00', '04:00', ['fri']), work: [loud(120)] }),
    (plan) => changedRules(plan, quiet('23:00', '04:00', ['thu'])),
  ],
  [
    'a curfew that bars loud work only, though it bars all',
    'curfew',
    planOf({
      ...summer,
      rules: { curfews: [{ name: 'Quiet', bars: 'all', from: '21:00', to: '00:30' }] },
      work: [plain(60)],
    }),
    (plan) => changedRules(plan, quiet('21:00', '00:30')),
  ],
  [
    'clocks that do not go forward',
    'curfew',
    // The curfew ends at 05:00 in summer time, 04:00 UTC; clocks left alone would say 05:00 UTC and lose an hour before it.
    planOf({ ...spring, rules: quiet('05:00', '12:00'), work: [loud(420)] }),
    (plan) => changedWindow(plan, { zone: 'Etc/UTC' }),
  ],
  [
    'clocks that do not go back',
    'curfew',
    planOf({ ...autumn, rules: quiet('21:00', '05:00'), work: [loud(120)] }),
    (plan) => changedWindow(plan, { zone: 'Etc/GMT-1' }),
  ],
  [
    'an edge in the hour that comes twice read as the first, where the second counts',
    'curfew',
    planOf({ ...autumn, rules: quiet('21:00', '01:30'), work: [loud(120)] }),
    // 01:30 of summer time is 00:30 UTC.
    (plan) => changedWindow(changedRules(plan, quiet('20:00', '00:30')), { zone: 'Etc/UTC' }),
  ],
  [
    'a window an hour longer than it is, for the change of clocks',
    'outside-window',
    planOf({ ...spring, work: [plain(660)] }),
    (plan) => changedWindow(plan, { end: first(plan).end + 3_600_000 }),
  ],
  [
    'a shift changeover ignored',
    'shift-break',
    planOf({
      ...summer,
      rules: { shifts: { longestMinutes: 240, changeoverMinutes: 30 } },
      work: [plain(300)],
    }),
    (plan) => changedRules(plan, { shifts: undefined }),
  ],
  [
    'a shift changeover counted from midnight',
    'shift-break',
    planOf({
      ...summer,
      rules: { shifts: { longestMinutes: 240, changeoverMinutes: 30 } },
      work: [plain(230)],
    }),
    (plan) => changedRules(plan, { shifts: { ...plan.rules.shifts!, longestMinutes: 360 } }),
  ],
  [
    'closed time ignored',
    'closed',
    planOf({
      ...summer,
      work: [{ ...plain(120), heeds: ['lifting'] }],
      more: {
        rules: {
          ...ruleSetSchema.parse({ schema: 1, name: 'Real' }),
          closed: [
            {
              name: 'lifting',
              rule: { text: 'Wind' },
              why: { text: '' },
              stretches: [{ start: at('2027-06-11 23:00'), end: at('2027-06-11 23:30') }],
              daily: [],
            },
          ],
        },
      },
    }),
    (plan) => changedRules(plan, { closed: [] }),
  ],
  [
    'plant that comes an hour later than thought',
    'resource',
    planOf({
      ...summer,
      work: [activity('A', 60, { resources: { crane: 1 } })],
      more: {
        resources: [{ id: 'crane', availability: [{ capacity: 1, from: at('2027-06-12 00:00') }] }],
      },
    }),
    (plan) => ({
      ...plan,
      resources: [{ id: 'crane', availability: [{ capacity: 1, from: at('2027-06-11 23:00') }] }],
    }),
  ],
  [
    'people by the clocks of another zone',
    'resource',
    planOf({
      ...summer,
      work: [activity('A', 60, { resources: { gang: 1 } })],
      more: {
        resources: [
          {
            id: 'gang',
            availability: [{ capacity: 1, dailyFromMinute: 1410, dailyToMinute: 360 }],
          },
        ],
      },
    }),
    (plan) => ({ ...plan, zone: 'Europe/Paris' }),
  ],
  [
    'one crane taken for two',
    'resource',
    planOf({
      ...summer,
      work: ['A', 'B'].map((id) => activity(id, 300, { resources: { crane: 1 } })),
      more: { resources: [{ id: 'crane', availability: [{ capacity: 1 }] }] },
    }),
    (plan) => ({ ...plan, resources: [{ id: 'crane', availability: [{ capacity: 2 }] }] }),
  ],
  [
    'a gap forgotten',
    'link',
    planOf({ ...summer, work: [plain(60), activity('B', 60, { after: ['A + 90'] })] }),
    (plan) => changedWork(plan, 'B', () => activity('B', 60, { after: ['A'] })),
  ],
  [
    'concrete thought to cure twice as fast',
    'not-cured',
    planOf({
      ...summer,
      work: [
        plain(60),
        {
          ...activity('B', 60),
          after: [{ activity: 'A', from: 'finish', gapMinutes: 0, cured: true }],
        },
      ],
      more: {
        curing: {
          settings: {
            maturity: 40,
            model: { model: 'temperature-time', datumC: 0 },
            otherwiseC: 20,
            source: 'Invented for this test',
            sureness: 'memory',
          },
          temperatures: [],
        } as Plan['curing'] & object,
      },
    }),
    (plan) => ({
      ...plan,
      curing: { ...plan.curing!, settings: { ...plan.curing!.settings, maturity: 20 } },
    }),
  ],
  [
    'work that need not be alone, though it must',
    'not-alone',
    planOf({
      ...summer,
      work: [{ ...plain(60), occupies: 'alone' }, activity('B', 60)],
    }),
    (plan) => changedWork(plan, 'A', () => plain(60)),
  ],
  [
    'a line that the window leaves open',
    'line',
    planOf({
      ...summer,
      window: { lines: ['up'] },
      work: [activity('A', 60, { lines: ['down'] })],
    }),
    (plan) => changedWindow(plan, { lines: [] }),
  ],
  [
    'an extent forgotten',
    'extent',
    planOf({
      ...summer,
      window: { extent: { from: 0, to: 100 } },
      work: [activity('A', 60, { extent: [50, 150] })],
    }),
    (plan) => changedWork(plan, 'A', () => plain(60)),
  ],
  [
    'a window taken for confirmed that is withdrawn',
    'withdrawn',
    planOf({ ...summer, window: { status: 'withdrawn' }, work: [plain(60)] }),
    (plan) => changedWindow(plan, { status: 'confirmed' }),
  ],
  [
    'what makes the line good forgotten',
    'not-made-good',
    planOf({
      ...summer,
      work: [{ ...plain(300), madeGoodBy: ['B'] }, activity('B', 300, { after: ['A'] })],
    }),
    (plan) => changedWork(plan, 'A', () => plain(300)),
  ],
  [
    'a key date forgotten',
    'key-date-missing',
    planOf({ ...summer, work: [{ ...plain(60), keyDate: at('2027-06-12 00:00') }] }),
    (plan) => changedWork(plan, 'A', () => plain(60)),
  ],
  [
    'units thought done that are not',
    'left-out',
    planOf({ ...summer, work: [activity('A', 0, { units: [4, 30, 0, 0] })] }),
    (plan) => changedWork(plan, 'A', () => activity('A', 0, { units: [2, 30, 0, 0], done: 2 })),
  ],
];

describe('the search led astray', () => {
  it.each(ways)('by %s is found out: %s', (_, code, real, astray) => {
    const honest = allocate(real, { clock: () => 0 });
    expect(verify(real, honest)).toEqual([]);
    const led = allocate(astray(real), { clock: () => 0 });
    expect(verify(real, led).map((fault) => fault.code)).toContain(code);
  });
});
