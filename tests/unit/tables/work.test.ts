import { describe, expect, it } from 'vitest';
import { activitiesFrom, readTable, type ActivitiesResult } from '../../../src/tables/index.js';

const read = (text: string): ActivitiesResult =>
  activitiesFrom(readTable(text), { zone: 'Europe/London', file: 'work.csv' });
const codes = (text: string): unknown[] =>
  read(text).faults.map(({ code, column }) => [code, column]);

describe('a row of the work table', () => {
  it('gives every field of a whole piece of work', () => {
    const { activities, faults } = read(
      'package,activity,title,after,minutes,minutes low,minutes high,lines,from,to,isolation,resources,loud,place,not before,key date,window\n' +
        'P1,A10,Dig,A5 + 48 h; start of A6,2 h,90,180,Up,1 km,1.5 km,S1;S2,crane:1; gang:2,yes,outside,2027-03-28,2027-10-31,W1\n',
    );
    expect(faults).toEqual([]);
    expect(activities).toEqual([
      {
        id: 'A10',
        package: 'P1',
        title: 'Dig',
        after: [
          { activity: 'A5', from: 'finish', gapMinutes: 2880 },
          { activity: 'A6', from: 'start', gapMinutes: 0 },
        ],
        work: { kind: 'whole', minutes: 120, spread: { low: 90, high: 180 } },
        lines: ['Up'],
        extent: { from: 1000, to: 1500 },
        isolation: ['S1', 'S2'],
        resources: [
          { resource: 'crane', amount: 1 },
          { resource: 'gang', amount: 2 },
        ],
        loud: true,
        place: 'outside',
        notBefore: Date.parse('2027-03-28T00:00Z'),
        // The end of the last day of October, an hour longer than others.
        keyDate: Date.parse('2027-11-01T00:00Z'),
        window: 'W1',
      },
    ]);
  });

  it('may leave all but name and minutes blank', () => {
    expect(read('activity,minutes\nA10,0\n').activities).toEqual([
      {
        id: 'A10',
        package: 'A10',
        title: '',
        after: [],
        work: { kind: 'whole', minutes: 0 },
        lines: [],
        isolation: [],
        resources: [],
        loud: false,
        place: 'inside',
      },
    ]);
  });

  it('gives repeated units with what is done and the time of each', () => {
    const text =
      'activity,units,done,minutes per unit,set up,make safe,minutes low,minutes high\nA1,8,8,45,30,0:20,40,70\nA2,8,,45,,,,\n';
    expect(read(text).activities.map((activity) => activity.work)).toEqual([
      {
        kind: 'units',
        units: 8,
        done: 8,
        minutesPerUnit: 45,
        setUpMinutes: 30,
        makeSafeMinutes: 20,
        spread: { low: 40, high: 70 },
      },
      { kind: 'units', units: 8, done: 0, minutesPerUnit: 45, setUpMinutes: 0, makeSafeMinutes: 0 },
    ]);
  });

  it('reads a bare number in the unit its heading names', () => {
    const { activities } = read(
      'activity,duration (hours),from (km),to (km)\nA1,1.5,2,3\nA2,30 min,500 m,1\n',
    );
    expect(activities.map((activity) => [activity.work, activity.extent])).toEqual([
      [
        { kind: 'whole', minutes: 90 },
        { from: 2000, to: 3000 },
      ],
      [
        { kind: 'whole', minutes: 30 },
        { from: 500, to: 1000 },
      ],
    ]);
  });

  it.each([
    ['neither minutes nor units', 'A1,,,,,,,', [['duration-missing', 'minutes']]],
    ['both', 'A1,60,8,,20,,,', [['minutes-and-units', 'units']]],
    ['units alone', 'A1,,8,,,,,', [['minutes-per-unit-missing', 'minutes per unit']]],
    ['more done than units', 'A1,,8,9,20,,,', [['more-done-than-units', 'done']]],
    ['no units', 'A1,,0,,20,,,', [['number-too-small', 'units']]],
    ['units that take no time', 'A1,,8,,0,,,', [['number-too-small', 'minutes per unit']]],
    ['done for a whole piece of work', 'A1,60,,1,,,,', [['units-missing', 'done']]],
    ['low above likely', 'A1,60,,,,61,90,', [['spread-out-of-order', 'minutes low']]],
    ['high below likely', 'A1,60,,,,30,59,', [['spread-out-of-order', 'minutes high']]],
    ['low alone', 'A1,60,,,,30,,', [['spread-half-given', 'minutes high']]],
    ['low, likely and high alike', 'A1,60,,,,60,60,', []],
    ['a done of 0 for a whole piece of work', 'A1,60,,0,,,,', []],
    [
      'a key date before "not before"',
      'A1,60,,,,,,2027-03-01',
      [['key-date-before-not-before', 'key date']],
    ],
  ])('with %s', (_, row, expected) => {
    const heading =
      'activity,minutes,units,done,minutes per unit,minutes low,minutes high,key date,not before';
    expect(codes(`${heading}\n${row},${row.endsWith('01') ? '2027-03-02' : ''}\n`)).toEqual(
      expected,
    );
  });

  it('may be due on the day it may begin', () => {
    expect(codes('activity,minutes,not before,key date\nA1,60,2027-03-02,2027-03-02\n')).toEqual(
      [],
    );
  });
});
