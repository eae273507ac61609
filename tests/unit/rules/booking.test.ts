import ICAL from 'ical.js';
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  DAY,
  HOUR,
  localText,
  localTimeOf,
  MINUTE,
  type Instant,
} from '../../../src/calendar/index.js';
import type { AccessWindow } from '../../../src/model/index.js';
import {
  bookingRulesSchema,
  daysTouched,
  exampleBooking,
  milestonesFor,
} from '../../../src/rules/booking/index.js';
import { bookingCalendar } from '../../../src/engine/booked-calendar.js';
import { at, zone } from '../../helpers/clock.js';

const windowOf = (start: string, end: string, more: Partial<AccessWindow> = {}): AccessWindow => ({
  id: 'W1',
  title: 'Deck renewal',
  start: at(start),
  end: at(end),
  zone,
  lines: [],
  isolation: [],
  status: 'requested',
  trainsAfter: '',
  ...more,
});
const weekend = windowOf('2027-06-26 22:00', '2027-06-27 08:00');
const book = (milestones: Record<string, unknown>[], more: Record<string, unknown> = {}) =>
  bookingRulesSchema.parse({
    schema: 1,
    name: 'test',
    milestones: milestones.map((milestone, i) => ({
      milestone: `M${i}`,
      source: 'this test',
      sureness: 'our own',
      ...milestone,
    })),
    ...more,
  });
const dues = (window: AccessWindow, milestones: Record<string, unknown>[], more = {}) =>
  milestonesFor(window, book(milestones), 0, more).map((milestone) =>
    localText(localTimeOf(milestone.due, zone)),
  );

describe('a due time', () => {
  it('is by the clock on the day, whatever clocks did between', () => {
    // 24 weeks before a June night is winter time.
    expect(dues(weekend, [{ weeks: 24, time: '22:00' }])).toEqual(['2027-01-09 22:00']);
  });
  it('without a time is the last minute of the day', () => {
    expect(dues(weekend, [{ days: 1 }])).toEqual(['2027-06-25 23:59']);
  });
  it('in months falls on the last day of a month that is too short', () => {
    const last = windowOf('2027-03-31 22:00', '2027-04-01 05:00');
    expect(dues(last, [{ months: 1 }, { months: 13 }, { months: 4 }])).toEqual([
      '2026-02-28 23:59',
      '2026-11-30 23:59',
      '2027-02-28 23:59',
    ]);
  });
  it('in the hour that clocks skip is the change', () => {
    const after = windowOf('2027-03-29 22:00', '2027-03-30 05:00');
    expect(dues(after, [{ days: 1, time: '01:30' }])).toEqual(['2027-03-28 02:00']);
  });
  it('counts from the first day of the railway week that holds the start', () => {
    // Friday 2 July belongs to the week of Saturday 26 June.
    const friday = windowOf('2027-07-02 22:00', '2027-07-03 05:00');
    expect(dues(friday, [{ before: 'railway week', weeks: 1 }])).toEqual(['2027-06-19 23:59']);
    expect(dues(weekend, [{ before: 'railway week', weeks: 1 }])).toEqual(['2027-06-19 23:59']);
  });
  it('says that a window lies in two weeks and counts from the first', () => {
    const friday = windowOf('2027-07-02 22:00', '2027-07-03 05:00');
    const inTwo = (window: AccessWindow) =>
      milestonesFor(window, book([{ before: 'railway week' }]), 0)[0]?.inTwo;
    expect(inTwo(friday)).toBe(true);
    expect(inTwo(windowOf('2027-07-02 22:00', '2027-07-03 00:00'))).toBeUndefined();
  });
  it('counts from the period of the railway year, or from the one it is given', () => {
    const periodStart = () => at('2027-06-06 00:00');
    expect(dues(weekend, [{ before: 'four-week period', weeks: 26 }], { periodStart })).toEqual([
      '2026-12-06 23:59',
    ]);
    expect(dues(weekend, [{ before: 'four-week period', weeks: 26 }])).toEqual([
      '2026-11-29 23:59',
    ]);
  });
  it('is never later for a longer lead time', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 700 }),
        fc.integer({ min: 1, max: 60 }),
        (days, more) => {
          const [first, second] = milestonesFor(
            weekend,
            book([{ days: days + more }, { days }]),
            0,
          );
          expect(first!.milestone).toBe('M0');
          expect(Math.abs(second!.due - first!.due - more * DAY)).toBeLessThanOrEqual(HOUR);
        },
      ),
    );
  });
});

describe('the state of a milestone', () => {
  const due = at('2027-04-03 22:00');
  const rules = book([{ weeks: 12, time: '22:00', metWhen: 'confirmed' }]);
  const state = (now: Instant, window = weekend, more = {}) =>
    milestonesFor(window, rules, now, more)[0]!.state;
  it('is due up to its minute and late after it', () => {
    expect(state(due)).toBe('due');
    expect(state(due + MINUTE)).toBe('late');
    expect(milestonesFor(weekend, rules, due - 90 * MINUTE)[0]!.minutesLeft).toBe(90);
    expect(milestonesFor(weekend, rules, due + 90 * MINUTE)[0]!.minutesLeft).toBe(-90);
  });
  it('is met when recorded, and says how late', () => {
    const met = new Map([['M0', due + 15 * MINUTE]]);
    expect(milestonesFor(weekend, rules, due + DAY, { met })[0]).toMatchObject({
      state: 'met',
      metLateByMinutes: 15,
    });
    expect(
      milestonesFor(weekend, rules, due + DAY, { met: new Map([['M0', due]]) })[0],
    ).not.toHaveProperty('metLateByMinutes');
  });
  it('is not met by a record dated in the time to come', () => {
    expect(state(due - DAY, weekend, { met: new Map([['M0', due]]) })).toBe('due');
  });
  it('is met by the status that implies it', () => {
    expect(state(due + DAY, { ...weekend, status: 'confirmed' })).toBe('met');
    expect(state(due + DAY, { ...weekend, status: 'offered' })).toBe('late');
  });
  it('is missed at adding when the window came too late for it', () => {
    expect(state(due + DAY, weekend, { addedAt: due + MINUTE })).toBe('missed at adding');
    expect(state(due + DAY, weekend, { addedAt: due })).toBe('late');
  });
  it('is not needed once the window is withdrawn', () => {
    expect(state(due + DAY, { ...weekend, status: 'withdrawn' })).toBe('not needed');
  });
});

describe('a restriction', () => {
  it('sees the milestones of its class only', () => {
    const rules = book([{}, { classes: ['major'] }, { classes: ['minor'] }]);
    const names = (restriction?: string) =>
      milestonesFor(weekend, rules, 0, restriction ? { restriction } : {}).map(
        (milestone) => milestone.milestone,
      );
    expect(names()).toEqual(['M0']);
    expect(names('major')).toEqual(['M0', 'M1']);
  });
  it('touches the days it is in, and not the one it ends at the midnight of', () => {
    expect(daysTouched(weekend)).toBe(2);
    expect(daysTouched(windowOf('2027-06-26 00:00', '2027-06-27 00:00'))).toBe(1);
    expect(daysTouched(windowOf('2027-03-27 00:00', '2027-04-03 00:01'))).toBe(8);
  });
});

describe('the example lead times', () => {
  it('are those of the sample file, and each says where it comes from', () => {
    const file = new URL('../../../sample-csv/booking.json', import.meta.url);
    expect(bookingRulesSchema.parse(JSON.parse(readFileSync(file, 'utf8')))).toEqual(
      exampleBooking,
    );
    for (const milestone of exampleBooking.milestones)
      expect(milestone.source.length).toBeGreaterThan(10);
  });
  it('refuse two milestones of one name', () => {
    const [one] = exampleBooking.milestones;
    expect(
      bookingRulesSchema.safeParse({ ...exampleBooking, milestones: [one, one] }).success,
    ).toBe(false);
  });
});

describe('diary entries', () => {
  const rules = book([
    { weeks: 12, milestone: 'Bid; amended, trains' },
    { weeks: 20, metWhen: 'offered' },
  ]);
  const events = (window: AccessWindow) => {
    const milestones = milestonesFor(window, rules, 0);
    const file = bookingCalendar({ milestones, calendar: { name: 'Plan 1', stamp: 0 } });
    return new ICAL.Component(ICAL.parse(file) as unknown[]).getAllSubcomponents('vevent');
  };
  const textOf = (event: ICAL.Component, name: string): string =>
    String(event.getFirstPropertyValue(name));
  it('leave out what is met and keep their uid when the window moves', () => {
    const before = events({ ...weekend, status: 'offered' });
    const after = events({
      ...weekend,
      status: 'offered',
      start: weekend.start + 7 * DAY,
      end: weekend.end + 7 * DAY,
    });
    expect(before).toHaveLength(1);
    expect(textOf(after[0]!, 'uid')).toBe(textOf(before[0]!, 'uid'));
    const start = (event: ICAL.Component): number =>
      new ICAL.Event(event).startDate.toJSDate().getTime();
    expect(start(after[0]!)).toBe(start(before[0]!) + 7 * DAY);
  });
  it('are cancelled with their window and carry the cautions', () => {
    const [one] = events({ ...weekend, status: 'withdrawn' });
    expect(textOf(one!, 'status')).toBe('CANCELLED');
    expect(textOf(one!, 'description')).toContain('It is not a permit');
  });
  it('take a name with half a character in it', () => {
    const [one] = events({ ...weekend, id: 'W\ud83d' });
    expect(textOf(one!, 'uid')).toContain('W%EF%BF%BD/');
  });
});
