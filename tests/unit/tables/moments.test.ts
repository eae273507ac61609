import fc from 'fast-check';
import { mendOf, messageOf } from '../../helpers/problem-words.js';
import { describe, expect, it } from 'vitest';
import { isoText } from '../../../src/calendar/index.js';
import { dateOrderOf } from '../../../src/tables/parse/date-order.js';
import { momentParser } from '../../../src/tables/parse/moment.js';
import { spanOf } from '../../../src/tables/parse/span.js';
import { parseMoment, type DateOrder } from '../../../src/tables/parse/written-moment.js';

const date = { year: 2027, month: 3, day: 28 };
const time = { hour: 23, minute: 30 };
const good: [text: string, read: object, order?: DateOrder][] = [
  ['2027-03-28 23:30', { date, time }],
  ['2027-03-28T23:30', { date, time }],
  ['2027-03-28T23:30:00.000', { date, time }],
  ['2027/3/28 23:30', { date, time }],
  ['2027-03-28T23:30+01:00', { date, time, offset: 60 }],
  ['2027-03-28 23:30 -0330', { date, time, offset: -210 }],
  ['2027-03-28T23:30:00Z', { date, time, offset: 0 }],
  ['2027-03-28 23:30 UTC', { date, time, offset: 0 }],
  ['28/03/2027 23:30', { date, time }],
  ['28.03.2027, 23:30', { date, time }],
  ['28-3-2027 2330', { date, time }],
  ['28-Mar-2027 23:30', { date, time }],
  ['28 March 2027 11:30 pm', { date, time }],
  ['Sun 28 Mar 2027 23:30', { date, time }],
  ['Sunday, 28 March 2027 23:30', { date, time }],
  ['28th Mar 2027', { date }],
  ['03/28/2027 23:30', { date, time }, 'month-first'],
  ['2027-03-28', { date }],
  ['05:30', { time: { hour: 5, minute: 30 } }],
  ['5:30 am', { time: { hour: 5, minute: 30 } }],
  ['12:00 am', { time: { hour: 0, minute: 0 } }],
  ['12:00 pm', { time: { hour: 12, minute: 0 } }],
  ['24:00', { time: { hour: 24, minute: 0 } }],
  ['2027-03-28 24:00', { date, time: { hour: 24, minute: 0 } }],
  ['29/02/2028', { date: { year: 2028, month: 2, day: 29 } }],
  // Day 36526 of the 1900 system is 1 January 2000; 28 March 2027 is 9948 days on.
  ['46474', { date, serial: true }],
  ['46474.979166666664', { date, time, serial: true }],
  ['46474,979166666664', { date, time, serial: true }],
  // A serial number worked out by adding a third of a day three times.
  ['46474.99999999999', { date: { ...date, day: 29 }, time: { hour: 0, minute: 0 }, serial: true }],
  ['36526', { date: { year: 2000, month: 1, day: 1 }, serial: true }],
];

const bad: [text: string, code: string][] = [
  ['soon', 'date-not-read'],
  ['2027-03', 'date-not-read'],
  ['2027-03-28 at night', 'date-not-read'],
  ['2027-03-28x23:30', 'date-not-read'],
  ['28/03-2027', 'date-not-read'],
  ['28 Mar. 27', 'date-not-read'],
  ['123456', 'date-not-read'],
  ['20000', 'date-not-read'],
  ['28/03/27', 'two-digit-year'],
  ['28-Mar-27 23:30', 'two-digit-year'],
  ['31/02/2027', 'no-such-date'],
  ['29/02/2027', 'no-such-date'],
  ['2027-13-01', 'no-such-date'],
  ['0/1/2027', 'no-such-date'],
  ['2027-03-28 24:01', 'no-such-time'],
  ['23:60', 'no-such-time'],
  ['13:00 pm', 'no-such-time'],
  ['0:30 am', 'no-such-time'],
  ['23:30:01', 'not-on-a-minute'],
  ['46474.9792', 'not-on-a-minute'],
  ['Mon 28 March 2027', 'weekday-disagrees'],
  ['2027-03-28 23:30+15:00', 'offset-not-read'],
  ['2027-03-28 23:30+01:60', 'offset-not-read'],
];

describe('a date and time', () => {
  it.each(good)('"%s" is read', (text, read, order) => {
    expect(parseMoment(text, order ?? 'day-first')).toEqual({ value: read });
  });

  it.each(bad)('"%s" is refused as %s', (text, code) => {
    expect(parseMoment(text, 'day-first')).toMatchObject({ problem: { code } });
  });
});

describe('the order of a file’s dates', () => {
  it.each<[DateOrder, string[]]>([
    ['day-first', []],
    ['day-first', ['03/04/2027', '12/12/2027']],
    ['day-first', ['13/04/2027', '03/04/2027']],
    ['day-first', ['03/13/2027', '13/03/2027']],
    ['month-first', ['03/13/2027', '03/04/2027']],
    ['day-first', ['2027-03-13', '13 Mar 2027', '46474.5', '12:13']],
  ])('is %s for %j', (order, texts) => {
    expect(dateOrderOf(texts)).toBe(order);
  });
});

const london = 'Europe/London';
const span = (start: string, end: string, zone = london): unknown => {
  const from = parseMoment(start, 'day-first');
  const to = parseMoment(end, 'day-first');
  if ('problem' in from || 'problem' in to) throw new Error('a time of the test cannot be read');
  const read = spanOf(from.value, to.value, zone);
  if ('problem' in read) return [read.of, read.problem.code];
  const { value } = read;
  return [
    isoText(value.start, zone),
    isoText(value.end, zone),
    (value.end - value.start) / 60_000,
    ...[value.startWarning, value.endWarning].flatMap((item) => (item ? [item.code] : [])),
  ];
};

// Clocks in London go forward on 28 March 2027 and back on 31 October 2027, both at 01:00 UTC.
describe('a window’s start and end', () => {
  it.each<[start: string, end: string, result: unknown[]]>([
    ['2027-03-10 23:30', '05:30', ['2027-03-10T23:30:00+00:00', '2027-03-11T05:30:00+00:00', 360]],
    ['2027-03-10 01:00', '05:30', ['2027-03-10T01:00:00+00:00', '2027-03-10T05:30:00+00:00', 270]],
    ['2027-03-10 05:30', '05:30', ['2027-03-10T05:30:00+00:00', '2027-03-11T05:30:00+00:00', 1440]],
    ['2027-03-10 22:00', '24:00', ['2027-03-10T22:00:00+00:00', '2027-03-11T00:00:00+00:00', 120]],
    ['2027-03-10 24:00', '05:30', ['2027-03-11T00:00:00+00:00', '2027-03-11T05:30:00+00:00', 330]],
    ['2027-12-31 23:30', '05:30', ['2027-12-31T23:30:00+00:00', '2028-01-01T05:30:00+00:00', 360]],
    ['46474.5', '46475', ['2027-03-28T12:00:00+01:00', '2027-03-29T00:00:00+01:00', 720]],
    [
      '2027-03-28 00:59',
      '2027-03-28 09:00',
      ['2027-03-28T00:59:00+00:00', '2027-03-28T09:00:00+01:00', 421],
    ],
    [
      '2027-03-28 02:00',
      '2027-03-28 09:00',
      ['2027-03-28T02:00:00+01:00', '2027-03-28T09:00:00+01:00', 420],
    ],
    [
      '2027-03-28T01:00Z',
      '2027-03-28 09:00',
      ['2027-03-28T02:00:00+01:00', '2027-03-28T09:00:00+01:00', 420],
    ],
    // 01:00 is the very moment of the change: the edge, not the inside, of what is skipped.
    [
      '2027-03-28 01:00',
      '2027-03-28 09:00',
      ['2027-03-28T02:00:00+01:00', '2027-03-28T09:00:00+01:00', 420, 'time-at-clock-change'],
    ],
    ['2027-03-28 01:01', '2027-03-28 09:00', ['start', 'time-does-not-exist']],
    ['2027-03-28 01:59', '2027-03-28 09:00', ['start', 'time-does-not-exist']],
    ['2027-03-27 23:00', '01:30', ['end', 'time-does-not-exist']],
    [
      '2027-10-31 01:00',
      '2027-10-31 09:00',
      ['2027-10-31T01:00:00+01:00', '2027-10-31T09:00:00+00:00', 540, 'time-happens-twice'],
    ],
    [
      '2027-10-31 01:00+01:00',
      '2027-10-31 09:00',
      ['2027-10-31T01:00:00+01:00', '2027-10-31T09:00:00+00:00', 540],
    ],
    [
      '2027-10-31 00:30',
      '2027-10-31 01:30',
      ['2027-10-31T00:30:00+01:00', '2027-10-31T01:30:00+01:00', 60, 'time-happens-twice'],
    ],
    [
      '2027-10-31 00:30',
      '2027-10-31 01:30Z',
      ['2027-10-31T00:30:00+01:00', '2027-10-31T01:30:00+00:00', 120],
    ],
    [
      '2027-10-31 02:00',
      '2027-10-31 09:00',
      ['2027-10-31T02:00:00+00:00', '2027-10-31T09:00:00+00:00', 420],
    ],
    // Both shown twice: the shorter of the stretches that are not empty.
    [
      '2027-10-31 01:15',
      '2027-10-31 01:45',
      [
        '2027-10-31T01:15:00+01:00',
        '2027-10-31T01:45:00+01:00',
        30,
        'time-happens-twice',
        'time-happens-twice',
      ],
    ],
    [
      '2027-10-31 01:45',
      '2027-10-31 01:15',
      [
        '2027-10-31T01:45:00+01:00',
        '2027-10-31T01:15:00+00:00',
        30,
        'time-happens-twice',
        'time-happens-twice',
      ],
    ],
    ['2027-03-10 23:30', '2027-03-10 23:30', ['end', 'end-not-after-start']],
    ['2027-03-10 23:30', '2027-03-10 23:29', ['end', 'end-not-after-start']],
    ['23:30', '2027-03-11 05:30', ['start', 'date-missing']],
    ['2027-03-10', '2027-03-11 05:30', ['start', 'time-missing']],
    ['2027-03-10 23:30', '2027-03-11', ['end', 'time-missing']],
  ])('%s to %s', (start, end, result) => {
    expect(span(start, end)).toEqual(result);
  });

  it('a half-hour change is a half hour', () => {
    // Lord Howe Island goes back by 30 minutes on 4 April 2027 at 02:00 (tz database).
    expect(span('2027-04-04 01:45', '2027-04-04 03:00', 'Australia/Lord_Howe')).toEqual([
      '2027-04-04T01:45:00+10:30',
      '2027-04-04T03:00:00+10:30',
      75,
      'time-happens-twice',
    ]);
  });

  it('the fault of a time that does not exist names the gap and both ways out', () => {
    const read = momentParser({
      zone: london,
      order: 'day-first',
      dateAlone: 'start',
      twice: ['later', 'allows-less'],
    })('2027-03-28 01:30');
    const { problem } = read as Extract<typeof read, { problem: unknown }>;
    expect(messageOf(problem)).toContain('from 2027-03-28 00:59 straight to 2027-03-28 02:00');
    expect(mendOf(problem)).toBe('Write 2027-03-28 00:59 or before, or 2027-03-28 02:00 or after.');
  });
});

describe('a date alone', () => {
  const read = (text: string, dateAlone: 'start' | 'end'): string => {
    const parsed = momentParser({
      zone: london,
      order: 'day-first',
      dateAlone,
      twice: ['later', 'allows-less'],
    })(text);
    return 'value' in parsed ? isoText(parsed.value, london) : parsed.problem.code;
  };

  it('is the first moment of the day for a beginning', () => {
    expect(read('2027-03-28', 'start')).toBe('2027-03-28T00:00:00+00:00');
  });

  it('is the end of that day for an end, even when the day has 23 or 25 hours', () => {
    expect(read('2027-03-28', 'end')).toBe('2027-03-29T00:00:00+01:00');
    expect(read('31/10/2027', 'end')).toBe('2027-11-01T00:00:00+00:00');
    expect(read('46474', 'end')).toBe('2027-03-29T00:00:00+01:00');
  });
});

it('reads the usual form, which has a way of its own, as it reads the others', () => {
  const two = fc.integer({ min: 0, max: 99 }).map((value) => String(value).padStart(2, '0'));
  const year = fc.oneof(fc.integer({ min: 0, max: 9999 }), fc.integer({ min: 1989, max: 2200 }));
  const told = (text: string): object => {
    const read = parseMoment(text, 'day-first');
    return 'problem' in read ? { code: read.problem.code } : read;
  };
  const small = fc.oneof(
    two,
    fc.constantFrom('01', '02', '12', '23', '24', '28', '29', '30', '31'),
  );
  fc.assert(
    fc.property(year, small, small, small, small, (written, month, day, hour, minute) => {
      const before = `${String(written).padStart(4, '0')}-${month}-${day}`;
      expect(told(`${before} ${hour}:${minute}`)).toEqual(told(`${before}T${hour}:${minute}`));
    }),
    { numRuns: 3000 },
  );
});
