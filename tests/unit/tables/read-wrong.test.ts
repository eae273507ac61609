// Each of these was read as something else without a word, or refused though its meaning is plain.
import { describe, expect, it } from 'vitest';
import { parseDuration } from '../../../src/tables/parse/duration.js';
import { parseMoment } from '../../../src/tables/parse/written-moment.js';
import { decodeBytes, planFrom, readTable, type PlanResult } from '../../../src/tables/index.js';
import { mendOf, messageOf } from '../../helpers/problem-words.js';

const plan = (windows: string, work?: string): PlanResult =>
  planFrom({
    windows: { file: 'windows.csv', content: windows },
    ...(work !== undefined && { work: { file: 'work.csv', content: work } }),
  });
const codes = (read: PlanResult): string[] =>
  read.faults.map((fault) => `${fault.file} ${fault.severity} ${fault.code}`);
const startsOf = (read: PlanResult): string[] =>
  read.plan.windows.map((window) => new Date(window.start).toISOString());

describe('the order of day and month', () => {
  it('is the one that makes a night of it where nothing else says, and is told', () => {
    const read = plan('window,start,end\nW,2/9/2027 11:30 PM,2/10/2027 5:30 AM\n');
    expect(startsOf(read)).toEqual(['2027-02-09T23:30:00.000Z']);
    expect(read.plan.windows[0]!.end - read.plan.windows[0]!.start).toBe(6 * 3_600_000);
    expect(codes(read)).toEqual(['windows.csv warning dates-month-first']);
    expect(messageOf(read.faults[0]!)).toContain('last more than 10 days');
  });

  it('is day first, and told, where nothing speaks for either', () => {
    const read = plan('window,start,end\nW,03/04/2027 23:00,05:00\n');
    expect(startsOf(read)).toEqual(['2027-04-03T22:00:00.000Z']);
    expect(codes(read)).toEqual(['windows.csv warning dates-day-first']);
  });

  it('is settled by the other tables of the plan', () => {
    const windows = 'window,start,end\nW,03/04/2027 23:00,05:00\n';
    const month = plan(windows, 'activity,minutes,key date\nA,60,04/28/2027\n');
    expect(startsOf(month)).toEqual(['2027-03-04T23:00:00.000Z']);
    expect(codes(month)).toContain('windows.csv warning dates-month-first');
    const day = plan(windows, 'activity,minutes,key date\nA,60,28/04/2027\n');
    expect(startsOf(day)).toEqual(['2027-04-03T22:00:00.000Z']);
    expect(day.faults).toEqual([]);
  });

  it('is told where two tables have two orders, and asked where a third does not say', () => {
    const windows = 'window,start,end\nW,28/03/2027 23:00,29/03/2027 05:00\n';
    const work = 'activity,minutes,not before,key date\nA,60,03/04/2027,04/28/2027\n';
    expect(codes(plan(windows, work))).toContain('work.csv warning dates-in-two-orders');
    const third = planFrom({
      windows: { file: 'windows.csv', content: windows },
      work: { file: 'work.csv', content: work },
      resources: { file: 'resources.csv', content: 'resource,capacity,from\ncrane,1,03/04/2027\n' },
    });
    expect(codes(third)).toContain('resources.csv error dates-read-two-ways');
  });

  it('is the one a person says of all tables', () => {
    const read = planFrom({
      windows: { file: 'w', content: 'window,start,end\nW,03/04/2027 23:00,05:00\n' },
      dateOrder: 'month-first',
    });
    expect(startsOf(read)).toEqual(['2027-03-04T23:00:00.000Z']);
    expect(read.faults).toEqual([]);
  });
});

describe('moments', () => {
  const day = { year: 2027, month: 2, day: 9 };
  const time = { hour: 23, minute: 30 };
  it.each([
    '09.02.2027 23.30',
    '09.02.2027 23:30 Uhr',
    '9. Februar 2027 23:30',
    '9 février 2027 23h30',
    'Di 09.02.2027 23:30',
    'Dienstag, 9. Februar 2027 um 23.30 Uhr',
    'mardi 9 février 2027 à 23h30',
    '9 févr. 2027 23:30',
    'Tue 9 Feb 2027 23:30',
  ])('%s is read', (text) => {
    expect(parseMoment(text, 'day-first')).toEqual({ value: { date: day, time } });
  });

  it.each([
    ['09/02/0027 23:30', 'two-digit-year'],
    ['0027-02-09 23:30', 'two-digit-year'],
    ['2270-02-09 23:30', 'year-not-likely'],
    ['1927-02-09', 'year-not-likely'],
    ['Mittwoch 09.02.2027', 'weekday-disagrees'],
    ['lundi 9 février 2027', 'weekday-disagrees'],
  ])('%s is refused as %s', (text, code) => {
    expect(parseMoment(text, 'day-first')).toMatchObject({ problem: { code } });
  });
});

describe('places and durations', () => {
  const place = (from: string, to: string): PlanResult =>
    plan(`window,start,end,from,to\nW,2027-02-09 23:30,05:30,${from},${to}\n`);

  it('of kilometres and metres are read', () => {
    expect(place('21+480', 'km 22+000').plan.windows[0]!.extent).toEqual({
      from: 21_480,
      to: 22_000,
    });
  });

  it('of metres beside miles are refused, either way round, and told why', () => {
    for (const read of [place('12m 34ch', '13m'), place('13 m', '12m 340y')]) {
      expect(codes(read)).toEqual(['windows.csv error place-reads-two-ways']);
      expect(mendOf(read.faults[0]!)).toContain('13 mi');
    }
    expect(place('13m', '40m').faults).toEqual([]);
    expect(place('12m 34ch', '13 mi').faults).toEqual([]);
  });

  it('of metres are refused in every row of a table that has miles in any', () => {
    const read = plan(
      'window,start,end,from,to\nW,2027-02-09 23:30,05:30,12m 10ch,12m 60ch\nV,2027-02-10 23:30,05:30,12m,13m\n',
    );
    expect(codes(read)).toEqual(['windows.csv error place-reads-two-ways']);
    expect(read.faults[0]).toMatchObject({ line: 3, column: 'from', value: '12m' });
    expect(read.plan.windows.map((window) => window.id)).toEqual(['W']);
  });

  it('that are dates are never read as places', () => {
    for (const text of ['2027-03-01', '01/03/2027', '1 Mar 2027', '20270301', '2027-03-01 23:00']) {
      const read = place(text, text);
      expect(read.plan.windows).toEqual([]);
      expect(read.faults.every((fault) => fault.severity === 'error')).toBe(true);
    }
    const read = plan('window,from,to\nW,2027-03-01 23:00,2027-03-02 05:00\n');
    expect(read.faults.map((fault) => messageOf(fault).match(/"\w+" holds dates/)?.[0])).toEqual([
      '"from" holds dates',
      '"to" holds dates',
    ]);
  });

  it('of an hour and ninety are refused', () => {
    for (const text of ['1 h 90', '1h 60 min'])
      expect(parseDuration(text)).toMatchObject({ problem: { code: 'duration-not-read' } });
    expect(parseDuration('1 h 59')).toEqual({ value: 119 });
    expect(parseDuration('90')).toEqual({ value: 90 });
  });
});

describe('bytes', () => {
  const utf8 = (text: string): number[] => [...new TextEncoder().encode(text)];

  it('of UTF-8 with a stray one stay UTF-8, and the cell is marked', () => {
    const bytes = new Uint8Array([
      ...utf8(
        'window,start,end,title\nW1,2027-02-09 23:30,05:30,Brücke\nW2,2027-02-10 23:30,05:30,Kelv',
      ),
      0xe9,
      ...utf8('by\n'),
    ]);
    const { text, encoding } = decodeBytes(bytes);
    expect(encoding).toBe('utf-8');
    expect(text).toContain('Brücke');
    expect(readTable(text).faults).toMatchObject([
      { code: 'letter-not-read', severity: 'warning', line: 3, row: 1, column: 'title' },
    ]);
    const read = planFrom({ windows: { file: 'w', content: bytes } });
    expect(read.plan.windows.map((window) => window.title)).toEqual(['Brücke', 'Kelv\ufffdby']);
  });

  it('of windows-1252 are read as such', () => {
    const bytes = new Uint8Array([...utf8('window,title\nW1,Br'), 0xfc, ...utf8('cke\n')]);
    expect(decodeBytes(bytes)).toMatchObject({ encoding: 'windows-1252' });
  });
});

describe('headings', () => {
  it('below two lines of title are found', () => {
    const read = plan(
      'Nights of the renewal\nissue,3\nwindow,start,end,lines\nW,2027-02-09 23:30,05:30,Up\n',
    );
    expect(read.faults).toEqual([]);
    expect(read.plan.windows).toHaveLength(1);
  });

  it('are not taken from a row of data', () => {
    const read = planFrom({
      windows: { file: 'w', content: 'window,start,end\nW,2027-02-09 23:30,05:30\n' },
      resources: {
        file: 'r',
        content:
          'Resource name;Number available;Available from;Available to;Rate/h;Supplier\ngang;2;;;185;Own\ncrane;1;2027-07-19;2027-08-15;420;Hire\n',
      },
    });
    expect(read.faults).toEqual([]);
    expect(read.plan.resources).toMatchObject([
      { id: 'gang', availability: [{ capacity: 2 }], ratePerHour: 185 },
      { id: 'crane', availability: [{ capacity: 1 }], ratePerHour: 420 },
    ]);
  });
});

describe('windows that no railway has', () => {
  const nights = ['02-09', '02-16', '02-23', '03-02', '03-09']
    .map((at, n) => `N${n},2027-${at} 23:30,05:30\n`)
    .join('');

  it('are refused where they last more than 31 days, and told of beyond 10', () => {
    const long = plan('window,start,end\nW,2027-02-09 23:30,2199-02-10 05:30\n');
    expect(codes(long)).toEqual(['windows.csv error window-too-long']);
    expect(messageOf(long.faults[0]!)).toContain('172 years');
    expect(messageOf(long.faults[0]!)).toContain('at most 31 days');
    const days = plan('window,start,end\nW,2027-02-09 23:30,2027-02-24 05:30\n');
    expect(codes(days)).toEqual(['windows.csv warning window-long']);
    expect(plan('window,start,end\nW,2027-02-09 00:00,2027-02-19 00:00\n').faults).toEqual([]);
  });

  it('are told of where they stand among the others in another year', () => {
    const read = plan(`window,start,end\n${nights}N9,2028-03-01 23:30,05:30\n`);
    expect(codes(read)).toEqual(['windows.csv warning year-stands-out']);
    expect(read.faults[0]).toMatchObject({ line: 7, row: 5, column: 'start' });
    expect(messageOf(read.faults[0]!)).toContain('Meant 2027?');
    expect(read.plan.windows).toHaveLength(6);
    expect(plan(`window,start,end\n${nights}N9,2027-07-24 23:30,05:30\n`).faults).toEqual([]);
  });

  it('are refused ten years from the others', () => {
    const read = plan(`window,start,end\n${nights}N9,2072-03-01 23:30,05:30\n`);
    expect(codes(read)).toEqual(['windows.csv error window-far-off']);
    expect(read.plan.windows).toHaveLength(5);
  });
});
