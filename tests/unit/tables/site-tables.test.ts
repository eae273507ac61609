import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import {
  forecastFrom,
  guessKind,
  plantFrom,
  readTable,
  rosterFrom,
  temperaturesFrom,
} from '../../../src/tables/index.js';
import { checkRoster, exampleHours } from '../../../src/rules/people/index.js';
import { mendOf, messageOf } from '../../helpers/problem-words.js';

const zone = 'Europe/London';
const options = { file: 'given.csv', zone };
const sample = (name: string): string =>
  readFileSync(new URL(`../../../sample-csv/${name}`, import.meta.url), 'utf8');
const codes = (faults: readonly { code: string; line?: number; column?: string }[]) =>
  faults.map((fault) => [fault.code, fault.line, fault.column]);

describe('a roster', () => {
  const read = (text: string) => rosterFrom(readTable(text), options);

  it('is read under plain and trade headings, with its unknown columns left alone', () => {
    const { turns, faults } = read(
      'Gang,Book on,Book off,Travel (hours),Boots\nA,2027-03-06 22:00,06:00,0.5,brown\n',
    );
    expect(faults).toEqual([]);
    expect(turns).toEqual([
      {
        id: 'A 1',
        crew: 'A',
        start: Date.UTC(2027, 2, 6, 22),
        end: Date.UTC(2027, 2, 7, 6),
        travelMinutes: 30,
      },
    ]);
  });

  it('holds limits to the person where a row names person and gang', () => {
    const { turns } = read('gang,person,start,end\nA,P. Rowan,2027-03-06 22:00,06:00\n');
    expect(turns[0]!.crew).toBe('P. Rowan');
  });

  it('counts real time over the spring change: 22:00 to 06:00 is seven hours', () => {
    const { turns } = read('crew,start,end\nA,2027-03-27 22:00,2027-03-28 06:00\n');
    expect((turns[0]!.end - turns[0]!.start) / 3_600_000).toBe(7);
  });

  it.each([
    // On 31 October 2027 clocks in London show 01:00 to 02:00 twice: at 00:00 and at 01:00 universal time.
    [
      '2027-10-30 18:00,2027-10-31 01:30',
      Date.UTC(2027, 9, 30, 17),
      Date.UTC(2027, 9, 31, 1, 30),
      'end',
    ],
    [
      '2027-10-31 01:30,2027-10-31 09:00',
      Date.UTC(2027, 9, 31, 0, 30),
      Date.UTC(2027, 9, 31, 9),
      'start',
    ],
  ])('takes the longer reading of %s, and says so', (cells, start, end, column) => {
    const { turns, faults } = read(`crew,start,end\nA,${cells}\n`);
    expect([turns[0]!.start, turns[0]!.end]).toEqual([start, end]);
    expect(codes(faults)).toEqual([['time-happens-twice', 2, column]]);
    expect(messageOf(faults[0]!)).toContain('it counts more hours');
  });

  it.each([
    ['no who', 'crew,start,end\n,2027-03-06 22:00,06:00\n', ['cell-blank', 2, 'crew']],
    [
      'an end before its start',
      'crew,start,end\nA,2027-03-06 22:00,2027-03-06 06:00\n',
      ['end-not-after-start', 2, 'end'],
    ],
    ['no such date', 'crew,start,end\nA,2027-02-30 22:00,06:00\n', ['no-such-date', 2, 'start']],
    [
      'a turn named twice',
      'turn,crew,start,end\nT1,A,2027-03-06 22:00,06:00\nT1,A,2027-03-07 22:00,06:00\n',
      ['name-twice', 3, 'turn'],
    ],
    [
      'travel below nothing',
      'crew,start,end,travel\nA,2027-03-06 22:00,06:00,-5\n',
      ['duration-negative', 2, 'travel'],
    ],
    ['no column of who', 'start,end\n2027-03-06 22:00,06:00\n', ['column-missing', 1, 'crew']],
  ])('with %s says where and what', (_, text, fault) => {
    const { faults, turns } = read(text);
    expect(codes(faults)).toEqual([fault]);
    expect(mendOf(faults[0]!)).not.toBe('');
    expect(turns.length).toBe(text.includes('T1') ? 1 : 0);
  });

  // The sample's breaches are planted: see sample-csv/README.md. Worked out by hand from the cells, beside the code.
  it('of twelve weeks in the sample shows each planted breach and no other', () => {
    const { turns, faults } = rosterFrom(readTable(sample('roster.csv')), options);
    expect(faults).toEqual([]);
    const found = checkRoster(turns, exampleHours, zone).breaches.map((breach) => [
      breach.assignment,
      breach.name,
      breach.excess,
    ]);
    expect(found).toEqual([
      // 21:30 to 09:45 is 12 h 15; then 12 h 45 by the clock to 21:30, of which travel each way takes 1 h.
      ['A2.3', 'Turn of duty', 15],
      ['A2.4', 'Rest between turns', 75],
      // Seven turns in each of weeks 9 and 10 are 14; of the next week's, each has 14 in its fortnight too.
      ['A10.7', 'Turns in fourteen days', 1],
      ['A11.1', 'Turns in fourteen days', 1],
      ['A11.2', 'Turns in fourteen days', 1],
      ['A11.3', 'Turns in fourteen days', 1],
      ['A11.4', 'Turns in fourteen days', 1],
      // 18:30 to 07:00 is 12 h 30 less 1 h 30 of travel.
      ['B5.6', 'Rest between turns', 60],
      ['B5.7', 'Rest between turns', 60],
      // Four turns of 9 h and three of 11 h 30, with 1 h 30 of travel each, are 81 h: 9 over 72.
      ['B5.7', 'Hours in a week', 540],
      ['B6.1', 'Rest between turns', 60],
      ['B6.1', 'Hours in a week', 540],
      ['B6.2', 'Hours in a week', 540],
      ['B6.3', 'Hours in a week', 540],
      ['B6.4', 'Hours in a week', 540],
      ['O7.3', 'Turn of duty', 1],
    ]);
  });
});

describe('a forecast', () => {
  const read = (text: string) => forecastFrom(readTable(text), options);

  it.each([
    // Exact by definition: the international mile and nautical mile.
    ['wind (mph),gust', '22,9.8', 9.83488],
    ['wind km/h,gust', '36,9', 10],
    ['wind (knots),gust', '10,9', 5.14444],
    ['wind,gust', '22 mph,9', 9.83488],
    ['wind,gust', '9.8,12', 9.8],
  ])('under "%s" of %s is metres a second', (heads, cells, mps) => {
    const { rows, faults } = read(`time,${heads}\n2027-07-24 12:00,${cells}\n`);
    expect(faults).toEqual([]);
    expect(rows[0]!.windMps).toBeCloseTo(mps, 4);
  });

  it('at another height is brought to 10 m, and says so once', () => {
    const { rows, faults } = read(
      'time,wind,gust,height\n2027-07-24 12:00,10,15,50\n2027-07-24 13:00,10,15,50\n',
    );
    // (50 / 10) ^ 0.14 = 1.2527; gusts by (1.2527 + 0.4) / 1.4: worked out from a crane maker's manual.
    expect(rows[0]!.windMps).toBeCloseTo(10 / 1.2527, 3);
    expect(rows[0]!.gustMps).toBeCloseTo((15 * 1.4) / 1.6527, 3);
    expect(codes(faults)).toEqual([['wind-at-other-height', 2, 'height']]);
  });

  it.each([
    ['neither wind nor gust', 'time,wind,gust\n2027-07-24 12:00,,\n', ['cell-blank', 2, 'wind']],
    ['wind below nothing', 'time,wind\n2027-07-24 12:00,-1\n', ['wind-out-of-range', 2, 'wind']],
    ['a word for wind', 'time,wind\n2027-07-24 12:00,breezy\n', ['not-a-number', 2, 'wind']],
    [
      'one moment twice',
      'time,wind\n2027-07-24 12:00,1\n2027-07-24 12:00,2\n',
      ['time-twice', 3, 'time'],
    ],
    ['no column of wind', 'time,lightning\n2027-07-24 12:00,yes\n', ['column-missing', 1, 'wind']],
  ])('with %s says where and what', (_, text, fault) => {
    expect(codes(read(text).faults)).toEqual([fault]);
  });

  it('comes in time order whatever the order of its rows', () => {
    const { rows } = read('time,wind\n2027-07-24 15:00,1\n2027-07-24 12:00,2\n');
    expect(rows.map((row) => row.windMps)).toEqual([2, 1]);
  });
});

describe('temperatures', () => {
  it('are read in Celsius or Fahrenheit by heading or cell', () => {
    const read = (head: string, cell: string) =>
      temperaturesFrom(readTable(`time,${head}\n2027-07-24,${cell}\n`), options).rows[0]
        ?.temperatureC;
    expect(read('temperature', '12.5')).toBe(12.5);
    expect(read('temp F', '50')).toBeCloseTo(10, 9);
    expect(read('temperature', '50 F')).toBeCloseTo(10, 9);
    expect(read('temperature', '-3 °C')).toBe(-3);
  });

  it('that nothing has are refused', () => {
    const { faults } = temperaturesFrom(readTable('time,temperature\n2027-07-24,200\n'), options);
    expect(codes(faults)).toEqual([['temperature-out-of-range', 2, 'temperature']]);
  });
});

describe('a list of plant', () => {
  it('of the sample is read whole, each level with its source', () => {
    const { plant, faults } = plantFrom(readTable(sample('plant-noise.csv')), options);
    expect(faults).toEqual([]);
    expect(plant.length).toBe(6);
    expect(plant.every((noise) => noise.source !== 'not said')).toBe(true);
    expect(plant[0]).toMatchObject({ levelDb: 88, resource: 'breaker', onTimePercent: 60 });
  });

  it('takes a level of unknown origin as weak', () => {
    const { plant } = plantFrom(readTable('plant,level\nrig,91 dB(A)\n'), options);
    expect(plant).toEqual([{ plant: 'rig', levelDb: 91, source: 'not said', sureness: 'weak' }]);
  });
});

describe('the kind of a table of the site', () => {
  it.each([
    ['roster', 'Gang,Start,Finish'],
    ['roster', 'Name,Gang,Start time,End time,Possession'],
    ['forecast', 'Time,Wind speed (m/s),Gust'],
    ['forecast', 'time,gust'],
    ['temperatures', 'Date,Temp C'],
    ['plant', 'Plant,LAeq at 10 m,Source'],
    ['windows', 'Possession,Start,Finish,Lines'],
    ['resources', 'Plant,Qty'],
    [undefined, 'time,colour'],
  ])('%s is told from %s', (kind, heads) => {
    expect(guessKind(heads.split(','))).toBe(kind);
  });
});
