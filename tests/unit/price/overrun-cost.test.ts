import { describe, expect, it } from 'vitest';
import { overrunCost } from '../../helpers/prices-in-english.js';
import { aBook, aResource, at, aWindow, trainsDue } from './builders.js';

const window = aWindow();
const cost = (book: Record<string, unknown>, overrunMinutes: number, more = {}) =>
  overrunCost({
    window,
    overrunMinutes,
    prices: aBook(book),
    trains: [],
    resources: [],
    ...more,
  });
const byTrain = (more = {}) => ({ delay: { by: 'train', rate: '10', ...more } });
const late = (r: ReturnType<typeof cost>) => r.trains.map((t) => t.minutesLate);

describe('operator delay from the trains due', () => {
  it('holds a train due before handback until handback, and no train due at or after it', () => {
    const r = cost(byTrain(), 20, { trains: trainsDue([0, 5, 19, 20, 30]) });
    expect(late(r)).toEqual([20, 15, 1]);
    expect(r.total).toBe('360.00');
  });

  it('sends queued trains away one headway apart until a gap absorbs the lateness', () => {
    // Handback at 20: away at 20, 25, 30, 35; the train due at 60 is past the gap.
    const r = cost(byTrain({ headwayMinutes: 5 }), 20, { trains: trainsDue([0, 10, 18, 33, 60]) });
    expect(late(r)).toEqual([20, 15, 12, 2]);
    expect(r.rows[0]!.amount).toBe('490.00');
  });

  it('delays nobody when the line is given back on time, however close the timetable runs', () => {
    const r = cost(byTrain({ headwayMinutes: 5 }), 0, { trains: trainsDue([0, 1, 2, 3]) });
    expect(r.trains).toEqual([]);
    expect(r.total).toBe('0.00');
    expect(r.rows[0]!.formula).toBe('no train is held');
  });

  it('keeps trains at their timetabled gap where that is closer than the headway', () => {
    expect(late(cost(byTrain({ headwayMinutes: 5 }), 10, { trains: trainsDue([0, 2]) }))).toEqual([
      10, 10,
    ]);
  });

  it('weighs each train', () => {
    const trains = [
      { id: 'A', passesAt: window.end, weight: 0.1 },
      { id: 'B', passesAt: window.end, weight: 0.2 },
    ];
    const r = cost({ delay: { by: 'train', rate: '1' } }, 1, { trains });
    expect(r.total).toBe('0.30');
    expect(r.rows[0]!.inputs.find((i) => i.name === 'weighted minutes')?.value).toBe('0.3');
  });

  it('counts a train held past the threshold as cancelled with its deemed minutes, and one at it as late', () => {
    const rule = byTrain({ cancelAfterMinutes: 30, deemedMinutes: 45 });
    const r = cost(rule, 31, { trains: trainsDue([0, 1]) });
    expect(r.trains.map((t) => [t.cancelled, t.countedMinutes])).toEqual([
      [true, 45],
      [false, 30],
    ]);
    expect(r.total).toBe('750.00');
  });

  it('lets the trains behind a cancelled one gain only where the book says its path is freed', () => {
    const rule = { headwayMinutes: 10, cancelAfterMinutes: 30, deemedMinutes: 30 };
    const trains = trainsDue([0, 20, 25]);
    expect(late(cost(byTrain(rule), 31, { trains }))).toEqual([31, 21, 21]);
    expect(late(cost(byTrain({ ...rule, cancelledTrains: 'free-path' }), 31, { trains }))).toEqual([
      31, 11, 11,
    ]);
  });

  it('leaves out trains of other windows and those due before the booked end', () => {
    const trains = [
      ...trainsDue([-1]),
      { id: 'X', passesAt: window.end, weight: 1, window: 'W2' },
      { id: 'Y', passesAt: window.end, weight: 1, window: 'W1' },
    ];
    expect(cost(byTrain(), 10, { trains }).trains.map((t) => t.train)).toEqual(['Y']);
  });

  it('says when no train is listed', () => {
    expect(cost(byTrain(), 10).notPriced.join()).toContain('No train is listed');
  });

  it('prices each minute by its band where the book says bands, and rounds the row once', () => {
    const delay = {
      by: 'bands',
      bands: [
        { afterMinutes: 5, rate: { amount: '1', perMinutes: 3 } },
        { afterMinutes: 15, rate: { amount: '1', perMinutes: 7 } },
      ],
    };
    // 10/3 + 5/7 = 85/21 = 4.0476…; rounded apart it would be 3.33 + 0.71 = 4.04.
    expect(cost({ delay }, 20).total).toBe('4.05');
    expect(cost({ delay }, 5).total).toBe('0.00');
  });
});

describe('standing plant and labour', () => {
  const resources = [aResource('crane', 240)];

  it('charges an hourly rate by the minute', () => {
    expect(cost({}, 17, { resources }).total).toBe('68.00');
  });

  it('charges least hours from the first minute of overrun where the book says that it is a new hire', () => {
    const anew = { standing: { leastHours: 'overrun' } };
    const some = [aResource('crane', 240, { leastHours: 4 })];
    expect(cost(anew, 0, { resources: some }).total).toBe('0.00');
    expect(cost(anew, 1, { resources: some }).total).toBe('960.00');
    expect(cost(anew, 240, { resources: some }).total).toBe('960.00');
    expect(cost(anew, 241, { resources: some }).total).toBe('964.00');
  });

  it('holds least hours against the whole time on site where nothing else is said', () => {
    const some = [aResource('crane', 60, { leastHours: 7 })];
    const book = {};
    // Booked 6 h, paid for 7: the first overrun hour costs nothing more.
    expect(cost(book, 60, { resources: some }).total).toBe('0.00');
    expect(cost(book, 75, { resources: some }).total).toBe('15.00');
  });

  it('charges started blocks', () => {
    expect(cost({ standing: { blockMinutes: 15 } }, 16, { resources }).total).toBe('120.00');
  });

  it('pays the night factor to labour until the local clock leaves the band', () => {
    const book = {
      standing: {
        labour: ['gang'],
        factors: [{ name: 'night', factor: '1.5', on: 'labour', from: '22:00', to: '06:00' }],
      },
    };
    // 05:00-07:00: an hour at 1.5 and an hour plain; the crane is plant.
    const r = cost(book, 120, { resources: [aResource('gang', 100), aResource('crane', 10)] });
    expect(r.rows.map((row) => [row.code, row.amount])).toEqual([
      ['standing-crane', '20.00'],
      ['standing-gang', '250.00'],
    ]);
    expect(r.rows[1]!.formula).toBe(
      '1 x (60 min at 1.5 (night) + 60 min) x GBP 100 an hour = GBP 250.00',
    );
  });

  it('gives the day on which a band starts to the hours after midnight', () => {
    const factors = [
      { name: 'Sunday night', factor: '3', from: '22:00', to: '06:00', days: ['sun'] },
    ];
    const monday = aWindow({ start: at('2027-05-16 23:00'), end: at('2027-05-17 04:00') });
    const sunday = aWindow({ start: at('2027-05-15 23:00'), end: at('2027-05-16 04:00') });
    const book = { standing: { factors } };
    const gang = { resources: [aResource('gang', 60)] };
    expect(cost(book, 60, { ...gang, window: monday }).total).toBe('180.00');
    expect(cost(book, 60, { ...gang, window: sunday }).total).toBe('60.00');
  });

  it('pays the highest of several factors, or their product, as the book says', () => {
    const factors = [
      { name: 'night', factor: '1.5', from: '22:00', to: '06:00' },
      { name: 'holiday', factor: '2', holidaysOnly: true },
    ];
    const holidays = ['2027-05-13'];
    const more = { resources: [aResource('gang', 60)], holidays };
    expect(cost({ standing: { factors } }, 60, more).total).toBe('120.00');
    expect(cost({ standing: { factors, combine: 'multiply' } }, 60, more).total).toBe('180.00');
    expect(cost({ standing: { factors } }, 60, { ...more, holidays: [] }).total).toBe('90.00');
  });

  it('pays real hours over a clock change', () => {
    // Clocks go back at 02:00 on 31 October 2027: from 00:30 to 03:30 by the clock is four hours, all of them night.
    const window = aWindow({ start: at('2027-10-30 20:00'), end: at('2027-10-31 00:30') });
    const overrunMinutes = (at('2027-10-31 03:30') - window.end) / 60_000;
    expect(overrunMinutes).toBe(240);
    const factors = [{ name: 'night', factor: '2', from: '22:00', to: '02:00' }];
    const r = cost({ standing: { factors } }, overrunMinutes, {
      window,
      resources: [aResource('gang', 60)],
    });
    // Night to 02:00 is 2 h 30, 01:00-02:00 being shown twice; then 1 h 30 plain.
    expect(r.total).toBe('390.00');
  });

  it('keeps who is at work when the last piece begins, and says what has no rate', () => {
    const activity = (id: string, resource: string, amount: number) => ({
      id,
      package: 'P',
      title: id,
      after: [],
      work: { kind: 'whole' as const, minutes: 60 },
      lines: [],
      isolation: [],
      resources: [{ resource, amount }],
      loud: false,
      place: 'inside' as const,
    });
    const place = (id: string, from: string, to: string, window = 'W1') => ({
      activity: id,
      window,
      from: at(`2027-05-13 ${from}`),
      to: at(`2027-05-13 ${to}`),
    });
    const r = cost({}, 60, {
      resources: [
        aResource('gang', 100, { availability: [{ capacity: 9 }] }),
        aResource('crane', 500),
      ],
      activities: [
        activity('A', 'gang', 2),
        activity('B', 'gang', 1),
        activity('C', 'gang', 5),
        activity('D', 'rail saw', 1),
      ],
      placements: [
        place('A', '00:00', '02:00'),
        place('B', '01:00', '03:00'),
        place('A', '02:00', '03:00'),
        place('B', '03:00', '04:00'),
        place('C', '00:00', '04:00', 'W2'),
        place('D', '00:00', '01:00'),
      ],
    });
    expect(r.rows.map((row) => [row.code, row.amount])).toEqual([['standing-gang', '100.00']]);
    expect(r.notPriced).toContain('The time of rail saw is not priced: it has no rate an hour.');
    // Two of the three had left at 03:00, when the last piece began; all three are owed for their planned time.
    expect(r.onSite.map((row) => [row.amount, row.plannedMinutes, row.kept, row.owed])).toEqual([
      [1, 240, true, '400.00'],
      [1, 180, false, '300.00'],
      [1, 120, false, '200.00'],
    ]);
  });
});

describe('a rate an hour', () => {
  it('may be nothing, and is refused where it cannot be counted', () => {
    const at = (rate: number) => cost({}, 60, { resources: [aResource('gang', rate)] });
    expect(at(0).total).toBe('0.00');
    for (const rate of [-1, Infinity, Number.NaN]) expect(() => at(rate)).toThrow(RangeError);
  });
});

describe('charges, restriction, re-booking and damages', () => {
  it('charges a fixed sum only past its threshold', () => {
    const book = { fixed: [{ code: 'buses', name: 'Buses', afterMinutes: 30, amount: '2800' }] };
    expect(cost(book, 30).total).toBe('0.00');
    expect(cost(book, 31).total).toBe('2800.00');
  });

  it('charges a length threshold when the overrun, and not the booking, passes it', () => {
    const lengths = [{ code: 'long', name: 'Long closure', moreThanHours: 6, amount: '500' }];
    expect(cost({ lengths }, 0).total).toBe('0.00');
    expect(cost({ lengths }, 1).total).toBe('500.00');
    const long = aWindow({ start: at('2027-05-12 22:00') });
    expect(cost({ lengths }, 1, { window: long }).total).toBe('0.00');
  });

  it('charges minutes lost to every train due until the restriction is lifted', () => {
    const book = {
      restriction: { minutesLostPerTrain: '2.5', liftedAfterMinutes: 60, rate: '4' },
    };
    // Lifted at 90 min after the booked end: the train due then runs free.
    const r = cost(book, 30, { trains: trainsDue([0, 45, 89, 90]) });
    expect(r.total).toBe('30.00');
    expect(cost(book, 0, { trains: trainsDue([0, 45]) }).total).toBe('0.00');
  });

  it('leaves cancelled trains out of the restriction only where they free their path', () => {
    const book = (cancelledTrains: string) => ({
      delay: { by: 'train', rate: '4', headwayMinutes: 3, cancelAfterMinutes: 0, cancelledTrains },
      restriction: { minutesLostPerTrain: '1', liftedAfterMinutes: 20 },
    });
    const trains = trainsDue([0, 5, 15]);
    const restriction = (cancelledTrains: string) =>
      cost(book(cancelledTrains), 10, { trains }).rows[1]!.amount;
    // Lifted at 30: all three are due before, and the first two are late, so cancelled.
    expect(restriction('keep-path')).toBe('12.00');
    expect(restriction('free-path')).toBe('4.00');
  });

  it('says when the restriction outlasts the trains listed', () => {
    const restriction = { minutesLostPerTrain: '2', liftedAfterMinutes: 600, rate: '4' };
    expect(cost({ restriction }, 30, { trains: trainsDue([0]) }).notPriced.join()).toContain(
      'beyond the last train',
    );
    const given = cost({ restriction: { ...restriction, trains: 25 } }, 30);
    expect(given.notes).toEqual([]);
    expect(given.total).toBe('200.00');
  });

  it('prices the units left over', () => {
    const lostUnits = { units: 3, pricePerUnit: '1250.333', what: 'panels' };
    expect(cost({}, 0, { lostUnits }).rows[0]).toMatchObject({
      head: 're-booking',
      amount: '3751.00',
      formula: '3 panels x GBP 1250.333 each = GBP 3751.00',
    });
  });

  it('refuses units or a price that cannot be counted', () => {
    const lost = { units: 3, pricePerUnit: '5' };
    expect(() => cost({}, 0, { lostUnits: { ...lost, units: -1 } })).toThrow(RangeError);
    expect(() => cost({}, 0, { lostUnits: { ...lost, units: 1.5 } })).toThrow(RangeError);
    expect(() => cost({}, 0, { lostUnits: { ...lost, pricePerUnit: 'five' } })).toThrow(RangeError);
  });

  it('charges damages in started blocks after grace, up to the cap', () => {
    const damages = {
      rate: { amount: '900', perMinutes: 30 },
      afterMinutes: 10,
      blockMinutes: 30,
      cap: '2000',
    };
    const book = { basis: 'damages', damages };
    expect([10, 11, 40, 41, 400].map((m) => cost(book, m).total)).toEqual([
      '0.00',
      '900.00',
      '900.00',
      '1800.00',
      '2000.00',
    ]);
    expect(cost(book, 400).rows[0]!.formula).toContain('held to the cap of GBP 2000.00');
  });

  it('never counts damages and the loss they stand for together', () => {
    const book = {
      ...byTrain(),
      damages: { rate: '7' },
      fixed: [{ code: 'f', name: 'F', afterMinutes: 0, amount: '5' }],
    };
    const trains = trainsDue([0]);
    const loss = cost(book, 10, { trains });
    expect([loss.total, loss.notCounted]).toEqual(['105.00', '70.00']);
    expect(loss.rows.map((r) => r.counted)).toEqual([true, true, false]);
    const damages = cost({ ...book, basis: 'damages' }, 10, { trains });
    expect([damages.total, damages.notCounted]).toEqual(['70.00', '105.00']);
  });

  it('counts beside damages the heads that the book does not let them replace', () => {
    const book = {
      ...byTrain(),
      basis: 'damages',
      damages: { rate: '7', replaces: ['operator-delay'] },
    };
    const r = cost(book, 10, { trains: trainsDue([0]), resources: [aResource('crane', 60)] });
    expect([r.total, r.notCounted]).toEqual(['80.00', '100.00']);
  });
});

describe('a priced overrun', () => {
  it('rounds each row once, by the rule the book states', () => {
    const delay = { by: 'bands', bands: [{ afterMinutes: 0, rate: '0.125' }] };
    expect(cost({ delay, rounding: 'half-up' }, 1).total).toBe('0.13');
    expect(cost({ delay, rounding: 'half-even' }, 1).total).toBe('0.12');
    expect(cost({ delay, rounding: 'half-even' }, 3).total).toBe('0.38');
    expect(cost({ delay, decimals: 0 }, 4).total).toBe('1');
  });

  it('refuses an overrun that is negative or no whole minute', () => {
    for (const minutes of [-1, 1.5, Number.NaN])
      expect(() => cost({}, minutes)).toThrow(RangeError);
  });

  it('refuses a sum too large to keep exactly', () => {
    const fixed = [{ code: 'f', name: 'F', afterMinutes: 0, amount: '900000000000' }];
    expect(cost({ fixed }, 1).total).toBe('900000000000.00');
    const damages = { rate: '900000000000' };
    expect(() => cost({ damages }, 1000)).toThrow(/too large/);
  });

  it('carries source, cautions and the moment of handback', () => {
    const r = cost(byTrain({ source: 'letter 7' }), 10, { trains: trainsDue([0]) });
    expect(r.rows[0]!.source).toBe('letter 7');
    expect(r.handbackAt).toBe(window.end + 600_000);
    expect(r.cautions.join()).toContain('the contract governs');
  });
});
