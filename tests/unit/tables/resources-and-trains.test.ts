import { describe, expect, it } from 'vitest';
import { readTable, resourcesFrom, trainsFrom, windowsFrom } from '../../../src/tables/index.js';

const options = { zone: 'Europe/London', file: 'file.csv' };
const resources = (text: string) => resourcesFrom(readTable(text), options);

describe('the resources table', () => {
  it('gathers the rows of one resource, dated or daily', () => {
    const { resources: read, faults } = resources(
      'resource,capacity,from,to,rate per hour,least hours,crews\n' +
        'crane,1,2027-07-19,2027-08-15,£420.50,10,2\ngang,3,,,,,\ncrane,2,2027-08-16 12:00,,,,\ntester,,22:00,06:00,78,,\n',
    );
    expect(faults).toEqual([]);
    expect(read).toEqual([
      {
        id: 'crane',
        availability: [
          {
            capacity: 1,
            from: Date.parse('2027-07-18T23:00Z'),
            to: Date.parse('2027-08-15T23:00Z'),
          },
          { capacity: 2, from: Date.parse('2027-08-16T11:00Z') },
        ],
        ratePerHour: 420.5,
        leastHours: 10,
        crews: 2,
      },
      { id: 'gang', availability: [{ capacity: 3 }] },
      {
        id: 'tester',
        availability: [{ capacity: 1, dailyFromMinute: 1320, dailyToMinute: 360 }],
        ratePerHour: 78,
      },
    ]);
  });

  it.each([
    ['gang,-1,,,', ['number-too-small', 'capacity']],
    ['gang,1.5,,,', ['not-a-whole-number', 'capacity']],
    ['gang,1,22:00,,', ['daily-band-half-given', 'to']],
    ['gang,1,2027-03-01,06:00,', ['daily-band-half-given', 'from']],
    ['gang,1,2027-03-02,2027-03-01,', ['end-not-after-start', 'to']],
    ['gang,1,25:00,06:00,', ['no-such-time', 'from']],
    [',1,,,', ['cell-blank', 'resource']],
  ])('refuses %s', (row, expected) => {
    const { resources: read, faults } = resources(`resource,capacity,from,to,rate\n${row}\n`);
    expect(read).toEqual([]);
    expect(faults.map(({ code, column }) => [code, column])).toEqual([expected]);
  });

  it('refuses a second rate for the same resource, and keeps the first row', () => {
    const { resources: read, faults } = resources(
      'resource,capacity,rate\ngang,2,160\ngang,1,160\ngang,1,180\n',
    );
    expect(faults.map(({ code, line, column }) => [code, line, column])).toEqual([
      ['resource-disagrees', 4, 'rate'],
    ]);
    expect(read).toEqual([
      { id: 'gang', availability: [{ capacity: 2 }, { capacity: 1 }], ratePerHour: 160 },
    ]);
  });
});

describe('the trains table', () => {
  const { windows } = windowsFrom(
    readTable('window,start,end\nW1,2027-03-10 23:30,05:30\n'),
    options,
  );
  const trains = (text: string) => trainsFrom(readTable(text), { ...options, windows });

  it('reads a moment, or a time alone after the window it names', () => {
    expect(
      trains(
        'train,passes at,weight,window\n1A,2027-03-11 05:42,,\n1B,05:30,2.5,W1\n1C,05:29,"0,5",W1\n',
      ),
    ).toMatchObject({
      faults: [],
      trains: [
        { id: '1A', passesAt: Date.parse('2027-03-11T05:42Z'), weight: 1 },
        { id: '1B', passesAt: Date.parse('2027-03-11T05:30Z'), weight: 2.5, window: 'W1' },
        { id: '1C', passesAt: Date.parse('2027-03-12T05:29Z'), weight: 0.5, window: 'W1' },
      ],
    });
  });

  it.each([
    ['1A,05:42,,', ['date-missing', 'passes at']],
    ['1A,05:42,,W9', ['date-missing', 'passes at']],
    ['1A,2027-03-11,,', ['time-missing', 'passes at']],
    ['1A,2027-03-11 05:42,-1,', ['number-too-small', 'weight']],
    ['1A,2027-03-28 01:30,,', ['time-does-not-exist', 'passes at']],
    ['1A,,,', ['cell-blank', 'passes at']],
  ])('refuses %s', (row, expected) => {
    const { trains: read, faults } = trains(`train,passes at,weight,window\n${row}\n`);
    expect(read).toEqual([]);
    expect(faults.map(({ code, column }) => [code, column])).toEqual([expected]);
  });

  it('lets a train run on several days but not twice at once', () => {
    const { trains: read, faults } = trains(
      'train,passes at\n1A,2027-03-11 05:42\n1A,2027-03-12 05:42\n1A,2027-03-11 05:42\n',
    );
    expect(read).toHaveLength(2);
    expect(faults.map(({ code, line }) => [code, line])).toEqual([['name-twice', 4]]);
  });
});
