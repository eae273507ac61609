import { describe, expect, it } from 'vitest';
import { isoText } from '../../../src/calendar/index.js';
import { readTable, windowsFrom, type WindowsResult } from '../../../src/tables/index.js';

const read = (text: string, more: object = {}): WindowsResult =>
  windowsFrom(readTable(text), { zone: 'Europe/London', file: 'windows.csv', ...more });

describe('a row of the windows table', () => {
  it('gives every field of a window', () => {
    const { windows, faults } = read(
      'window,title,start,end,zone,lines,from,to,isolation,status,trains after\n' +
        'W1,"Night, long",2027-03-06 22:50,08:40,Europe/Paris,Up;Down,12m 34ch,11 mi,S1 [00:40-05:10]; S2,offered,Sunday trains\n',
    );
    expect(faults).toEqual([]);
    expect(windows).toEqual([
      {
        id: 'W1',
        title: 'Night, long',
        start: Date.parse('2027-03-06T21:50Z'),
        end: Date.parse('2027-03-07T07:40Z'),
        zone: 'Europe/Paris',
        lines: ['Up', 'Down'],
        extent: { from: 17702.784, to: 19996.0992 },
        isolation: [
          {
            section: 'S1',
            during: [{ fromMinute: 40, toMinute: 310 }],
          },
          { section: 'S2' },
        ],
        status: 'offered',
        trainsAfter: 'Sunday trains',
      },
    ]);
  });

  it('may leave all but name, start and end blank: any line, anywhere, no isolation, confirmed', () => {
    expect(
      read('Possession;Begins;Finishes\nW1;28/04/2027 23:30;29/04/2027 05:30\n').windows,
    ).toEqual([
      {
        id: 'W1',
        title: '',
        start: Date.parse('2027-04-28T22:30Z'),
        end: Date.parse('2027-04-29T04:30Z'),
        zone: 'Europe/London',
        lines: [],
        isolation: [],
        status: 'confirmed',
        trainsAfter: '',
      },
    ]);
  });

  it('with a fault is left out, every fault of it is told, and the others load', () => {
    const { windows, faults, rowOf } = read(
      'window,start,end,from,status\nW1,soon,2027-03-28 01:30,3,maybe\n\nW2,2027-03-10 23:30,05:30,,\n',
    );
    expect(windows.map((window) => window.id)).toEqual(['W2']);
    expect(
      faults.map(({ code, line, row, column, value, file }) => [
        file,
        code,
        line,
        row,
        column,
        value,
      ]),
    ).toEqual([
      ['windows.csv', 'date-not-read', 2, 0, 'start', 'soon'],
      ['windows.csv', 'extent-half-given', 2, 0, 'to', ''],
      ['windows.csv', 'status-not-known', 2, 0, 'status', 'maybe'],
    ]);
    expect([...rowOf]).toEqual([
      ['W1', 0],
      ['W2', 1],
    ]);
  });

  it('is told of by the heading the file uses', () => {
    const [fault] = read('Possession ref,Begins,Until\nW1,soon,06:00\n').faults;
    expect(fault).toMatchObject({ column: 'Begins' });
  });

  it('all blank is nothing', () => {
    expect(read('window,start,end\n,,\n')).toMatchObject({ windows: [], faults: [] });
  });

  it('with a cell of a hundred thousand characters is refused without trying to read it', () => {
    const { faults } = read(`window,start,end\nW1,${'1'.repeat(100_000)},06:00\n`);
    expect(faults.map((fault) => fault.code)).toEqual(['cell-too-long']);
  });
});

describe('the windows table', () => {
  it('reads all dates of the file in one order, and says when that is month first', () => {
    const { windows, faults } = read(
      'window,start,end\nW1,03/04/2027 23:30,03/05/2027 05:30\nW2,04/12/2027 23:30,04/13/2027 05:30\n',
    );
    expect(windows.map((window) => isoText(window.start, 'UTC').slice(0, 10))).toEqual([
      '2027-03-04',
      '2027-04-12',
    ]);
    expect(
      faults.map(({ code, severity, line, column }) => [code, severity, line, column]),
    ).toEqual([['dates-month-first', 'warning', 1, 'end']]);
  });

  it('reads dates in the order chosen, without a word', () => {
    const { windows, faults } = read('window,start,end\nW1,03/04/2027 23:30,05:30\n', {
      dateOrder: 'month-first',
    });
    expect(isoText(windows[0]!.start, 'UTC').slice(0, 10)).toBe('2027-03-04');
    expect(faults).toEqual([]);
  });

  it('with a needed column twice or missing loads nothing and says so at the headings', () => {
    expect(
      read('window,start,start,end\nW1,2027-03-10 23:30,2027-03-10 23:00,05:30\n'),
    ).toMatchObject({
      windows: [],
      faults: [{ code: 'column-twice', line: 1, column: 'start' }],
    });
    expect(read('a,b\n1,2\n').faults.map((fault) => [fault.code, fault.column])).toEqual([
      ['column-missing', 'window'],
      ['column-missing', 'start'],
      ['column-missing', 'end'],
      ['heading-not-read', 'a'],
      ['heading-not-read', 'b'],
    ]);
  });

  it('is not harmed by unknown columns, twice or with the names of an object’s inner workings', () => {
    const { windows, faults } = read(
      '__proto__,window,start,end,note,note\nx,W1,2027-03-10 23:30,05:30,y,z\n',
      { unread: ['__proto__', 'note'] },
    );
    expect(faults).toEqual([]);
    expect(windows).toHaveLength(1);
    expect(Object.getPrototypeOf(windows[0])).toBe(Object.prototype);
  });

  it('can name a window as an object names its inner workings', () => {
    const { windows, rowOf } = read(
      'window,start,end\n__proto__,2027-03-10 23:30,05:30\nconstructor,2027-03-11 23:30,05:30\n',
    );
    expect(windows.map((window) => window.id)).toEqual(['__proto__', 'constructor']);
    expect(rowOf.get('__proto__')).toBe(0);
  });

  it('takes columns by a map made by hand', () => {
    const { windows } = read('window,start,real start,end\nW1,never,2027-03-10 23:30,05:30\n', {
      map: { start: 'real start' },
      unread: ['start'],
    });
    expect(windows).toHaveLength(1);
  });
});
