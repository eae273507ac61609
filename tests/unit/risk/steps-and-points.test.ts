import { describe, expect, it } from 'vitest';
import { addMinutes, isoText, minutesBetween, type Instant } from '../../../src/calendar/index.js';
import { decisionsSchema, type GoPoint } from '../../../src/model/index.js';
import { grantStep, handback, type HandbackOptions } from '../../../src/risk/index.js';
import {
  anActivity,
  aPlan,
  at,
  aWindow,
  nightStart,
  placed,
  rulesWith,
  whole,
} from '../../helpers/handback-plan.js';

const options: HandbackOptions = { seed: 4, runs: 1000 };
const minute = (instant: Instant): number => minutesBetween(nightStart, instant);
const cut = anActivity('CUT', whole(120));

describe('a chain of steps alongside each other', () => {
  const step = (name: string, minutes: number, over: object = {}) => ({
    step: name,
    minutes,
    ...over,
  });
  const orders = [
    [0, 1, 2],
    [0, 2, 1],
    [1, 0, 2],
    [1, 2, 0],
    [2, 0, 1],
    [2, 1, 0],
  ];

  it.each(orders)('starts together whatever the order of the list: %d, %d, %d', (...order) => {
    const steps = [
      step('Protect', 20),
      step('Isolate', 30, { alongside: 'Protect', when: 'isolation' }),
      step('Earth', 25, { alongside: 'Isolate', when: 'isolation' }),
    ];
    const rules = rulesWith({ leadIn: order.map((k) => steps[k]!), leadOut: [] });
    // The sections are not dead before 40 minutes: so neither isolating nor earthing starts earlier.
    const window = aWindow({
      isolation: [{ section: 'S1', during: [{ start: at(40), end: at(460) }] }],
    });
    const work = anActivity('CUT', whole(120), { isolation: ['S1'] });
    const { cutOffs } = handback(
      aPlan([work], { rules }),
      window,
      [placed('CUT', 70, 190)],
      options,
    );
    const started = (name: string): number =>
      minute(cutOffs.find((cutOff) => cutOff.name === name)!.plannedStart);
    expect([started('Protect'), started('Isolate'), started('Earth')]).toEqual([0, 40, 40]);
  });

  it('moves with the step it starts with when that one is late', () => {
    const rules = rulesWith({
      leadIn: [
        step('Earth', 25, { alongside: 'Isolate' }),
        step('Isolate', 30, { alongside: 'Protect' }),
        step('Protect', 20),
      ],
      leadOut: [],
    });
    const late = {
      name: 'Late grant',
      step: grantStep,
      probability: 1,
      delay: { low: 50, likely: 50, high: 50 },
    };
    const only = handback(aPlan([cut], { rules }), aWindow(), [placed('CUT', 30, 150)], {
      ...options,
      events: [late],
    });
    expect(new Set(only.simulation.handbackMinutes)).toEqual(new Set([50 + 30 + 120]));
  });
});

describe('a step of the lead-in and one of the lead-out of the same name', () => {
  const rules = rulesWith({
    leadIn: [{ step: 'Test', minutes: 20 }],
    leadOut: [{ step: 'Test', minutes: 40, low: 30, high: 90 }],
  });
  const own = aPlan([cut], { rules });
  const placements = [placed('CUT', 20, 140)];

  it('have cut-offs and figures of their own', () => {
    const tight = aWindow({ end: at(200) });
    const { cutOffs, simulation } = handback(own, tight, placements, options);
    const tests = cutOffs.filter((cutOff) => cutOff.name === 'Test');
    expect(tests.map((test) => [test.kind, minute(test.plannedStart)])).toEqual([
      ['lead-in', 0],
      ['lead-out', 140],
    ]);
    expect(simulation.criticality.filter((item) => item.name === 'Test')).toHaveLength(2);
    expect(simulation.helpsMost).toMatchObject([{ name: 'Test', kind: 'lead-out' }]);
  });

  it('are told apart in what has been seen, the lead-in where nobody said which', () => {
    const statesAt = (stage?: 'lead-in' | 'lead-out') => {
      const seen = { step: 'Test', startedAt: at(145), ...(stage && { stage }) };
      const { cutOffs } = handback(own, aWindow(), placements, {
        ...options,
        at: at(150),
        actuals: [seen],
      });
      return cutOffs.filter((cutOff) => cutOff.name === 'Test').map((cutOff) => cutOff.state);
    };
    expect(statesAt('lead-out')).toEqual(['done', 'begun']);
    expect(statesAt('lead-in')).toEqual(['begun', 'to-come']);
    expect(statesAt()).toEqual(['begun', 'to-come']);
  });

  it('are told apart by an event that says which', () => {
    const mean = (stage: 'lead-in' | 'lead-out') =>
      handback(own, aWindow(), placements, {
        ...options,
        at: at(0),
        actuals: [{ step: 'Test', stage: 'lead-in', finishedAt: at(0) }],
        events: [
          {
            name: 'Fault found',
            step: 'Test',
            stage,
            probability: 1,
            delay: { low: 60, likely: 60, high: 60 },
          },
        ],
      }).simulation.p50;
    // The one of the lead-in is over, so its event has passed.
    expect(minute(mean('lead-out')) - minute(mean('lead-in'))).toBe(60);
  });
});

describe('go/no-go points', () => {
  const lift = anActivity('LIFT', whole(90), {
    after: [{ activity: 'CUT', from: 'finish', gapMinutes: 0 }],
  });
  const own = aPlan([cut, lift]);
  const placements = [placed('CUT', 30, 150), placed('LIFT', 150, 240)];
  const point = (over: Partial<GoPoint>): GoPoint => ({
    id: 'G1',
    window: 'W1',
    name: 'Begin?',
    holder: 'Site manager',
    ...over,
  });
  const timesOf = (points: readonly GoPoint[], over: Partial<HandbackOptions> = {}) =>
    handback(own, aWindow(), placements, { ...options, goPoints: points, ...over }).goPoints;

  it('before a piece of work fall on its cut-off, or on its point of no return where that is earlier', () => {
    const before = [point({ before: 'LIFT' })];
    expect(timesOf(before).map((time) => minute(time.at))).toEqual([480 - 45 - 30 - 90]);
    const commitments = [{ activity: 'LIFT', irreversible: true, testMinutes: 25 }];
    expect(timesOf(before, { commitments }).map((time) => minute(time.at))).toEqual([
      480 - 45 - 30 - 25 - 90,
    ]);
  });

  it('at a set time say for which work they come too late', () => {
    const set = (minutes: number): GoPoint => point({ at: isoText(at(minutes), 'Europe/London') });
    expect(timesOf([set(10)])[0]!.tooLateFor).toEqual([]);
    // The latest start of the cutting out is 195, of the lifting in 315; both are planned after minute 20.
    const late = handback(own, aWindow({ end: at(260) }), placements, {
      ...options,
      goPoints: [set(20)],
    }).goPoints[0]!;
    expect(late.tooLateFor).toEqual(['CUT']);
  });

  it('of other windows, and before work that is done elsewhere, are left out', () => {
    expect(timesOf([point({ window: 'W2', before: 'CUT' }), point({ before: 'X' })])).toEqual([]);
  });

  it('in a plan name a time with its offset, or the work they come before, and not both', () => {
    const read = (over: object): boolean =>
      decisionsSchema.safeParse({ goPoints: [{ ...point({}), ...over }] }).success;
    const time = isoText(addMinutes(nightStart, 60), 'Europe/London');
    expect(read({ before: 'CUT' })).toBe(true);
    expect(read({ at: time })).toBe(true);
    expect(read({})).toBe(false);
    expect(read({ at: time, before: 'CUT' })).toBe(false);
    expect(read({ at: '2027-03-28T01:30' })).toBe(false);
    expect(read({ at: '2027-03-38T01:30+01:00' })).toBe(false);
  });
});

describe('the stamp of the inputs', () => {
  const own = aPlan([cut]);
  const stamp = (over: object = {}, from = own): string =>
    handback(from, aWindow(), [placed('CUT', 30, 150)], { ...options, ...over }).inputsStamp;

  it('is the same for the same inputs and differs with any of them', () => {
    const stamps = [
      stamp(),
      stamp({ seed: 5 }),
      stamp({ at: at(10) }),
      stamp({ commitments: [{ activity: 'CUT', irreversible: true }] }),
      stamp({}, aPlan([anActivity('CUT', whole(121))])),
      stamp({}, aPlan([cut], { rules: rulesWith({ margin: { minutes: 46 } }) })),
    ];
    expect(new Set(stamps).size).toBe(stamps.length);
    expect(stamp()).toBe(stamps[0]);
    expect(stamps[0]).toMatch(/^[0-9a-f]{16}$/);
  });

  it('does not hang on work of other windows', () => {
    const more = aPlan([cut, anActivity('X', whole(5))]);
    expect(stamp({}, more)).toBe(stamp());
  });
});
