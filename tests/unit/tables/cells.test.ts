import { describe, expect, it } from 'vitest';
import { isoText } from '../../../src/calendar/index.js';
import { parseAfter } from '../../../src/tables/parse/after.js';
import { parseDemands } from '../../../src/tables/parse/demands.js';
import { deadTimes } from '../../../src/model/index.js';
import { parseIsolation } from '../../../src/tables/parse/isolation.js';
import { parseNames } from '../../../src/tables/parse/list.js';
import { parseAmount, parseDecimal, parseWhole } from '../../../src/tables/parse/number.js';
import { parseFlag, parsePlace, parseStatus } from '../../../src/tables/parse/words.js';

describe('an "after" cell', () => {
  const known = new Set(['A20', 'B+2', 'C - 5', 'start of D']);
  const after = (text: string) => parseAfter(text, (id) => known.has(id));
  it.each<[string, string, 'finish' | 'start', number]>([
    ['A20', 'A20', 'finish', 0],
    ['A20 + 48 h', 'A20', 'finish', 2880],
    ['A20+90', 'A20', 'finish', 90],
    ['A20 +2d', 'A20', 'finish', 2880],
    ['A20 + 0', 'A20', 'finish', 0],
    ['start of A20', 'A20', 'start', 0],
    ['start\u00a0of\u00a0A20', 'A20', 'start', 0],
    ['Start of A20 + 30 min', 'A20', 'start', 30],
    ['finish of A20 + 1:30', 'A20', 'finish', 90],
    ['end of A20', 'A20', 'finish', 0],
    ['B+2', 'B+2', 'finish', 0],
    ['B+2 + 10', 'B+2', 'finish', 10],
    ['C - 5', 'C - 5', 'finish', 0],
    ['start of D', 'start of D', 'finish', 0],
    ['X-20', 'X-20', 'finish', 0],
  ])('"%s" waits for %s (%s) and %i minutes', (text, activity, from, gapMinutes) => {
    expect(after(text)).toEqual({ value: [{ activity, from, gapMinutes }] });
  });

  it('holds several', () => {
    expect(after('A20; start of B+2 + 5;')).toMatchObject({
      value: [{ activity: 'A20' }, { activity: 'B+2', gapMinutes: 5 }],
    });
  });

  it.each([
    ['A20 + -30 min', 'gap-negative'],
    ['A20 - 30 min', 'gap-negative'],
    ['A20 − 30 min', 'gap-negative'],
    ['A20 + 0.5 min', 'after-not-read'],
    ['A20 + soon', 'after-not-read'],
    ['+ 30', 'after-not-read'],
  ])('"%s" is refused as %s', (text, code) => {
    expect(after(text)).toMatchObject({ problem: { code } });
  });
});

describe('a "resources" cell', () => {
  it('names amounts, one where none is given', () => {
    expect(parseDemands('crane:1; gang : 2;welder')).toEqual({
      value: [
        { resource: 'crane', amount: 1 },
        { resource: 'gang', amount: 2 },
        { resource: 'welder', amount: 1 },
      ],
    });
  });

  it.each([
    ['crane:0', 'resource-not-read'],
    ['crane:', 'resource-not-read'],
    ['crane:1.5', 'resource-not-read'],
    [':2', 'resource-not-read'],
    ['crane:1, gang:2', 'resource-not-read'],
    ['crane; crane', 'resource-twice'],
  ])('"%s" is refused as %s', (text, code) => {
    expect(parseDemands(text)).toMatchObject({ problem: { code } });
  });
});

describe('an "isolation" cell', () => {
  const zone = 'Europe/London';
  const read = (text: string, start: string, end: string): unknown => {
    const window = { start: Date.parse(start), end: Date.parse(end) };
    const parsed = parseIsolation(text, window, zone, 'day-first');
    if ('problem' in parsed) return parsed.problem.code;
    const shown = parsed.value.map((section) => [
      section.section,
      ...(section.during
        ? deadTimes(section, window, zone).flatMap((each) => [
            isoText(each.start, zone),
            isoText(each.end, zone),
          ])
        : []),
    ]);
    return parsed.warning ? [...shown, parsed.warning.code] : shown;
  };
  const night = ['2027-03-06T22:50Z', '2027-03-07T08:40Z'] as const;

  it.each<[string, unknown]>([
    ['S1', [['S1']]],
    ['S1;S2', [['S1'], ['S2']]],
    [
      'S1 [00:40-05:10]; S2',
      [['S1', '2027-03-07T00:40:00+00:00', '2027-03-07T05:10:00+00:00'], ['S2']],
    ],
    ['S1 [23:00–05:10]', [['S1', '2027-03-06T23:00:00+00:00', '2027-03-07T05:10:00+00:00']]],
    ['S1 [22:50-08:40]', [['S1', '2027-03-06T22:50:00+00:00', '2027-03-07T08:40:00+00:00']]],
    [
      'S1 [2027-03-07 00:40 - 2027-03-07 05:10]',
      [['S1', '2027-03-07T00:40:00+00:00', '2027-03-07T05:10:00+00:00']],
    ],
    [
      'S1 [07/03/2027 00:40 - 05:10]',
      [['S1', '2027-03-07T00:40:00+00:00', '2027-03-07T05:10:00+00:00']],
    ],
    ['S1 [22:49-05:10]', 'isolation-outside-window'],
    ['S1 [00:40-08:41]', 'isolation-outside-window'],
    ['S1 [05:10-00:40]', 'isolation-outside-window'],
    ['S1 [00:40-00:40]', 'isolation-outside-window'],
    ['S1 [00:40]', 'isolation-not-read'],
    ['[00:40-05:10]', 'isolation-not-read'],
    ['S1 [00:40-05:10', 'isolation-not-read'],
    ['S1 00:40-05:10]', 'isolation-not-read'],
    ['S1; S1', 'section-twice'],
    [
      'S1 [00:40-02:00]; S1 [03:00-05:10]',
      [
        [
          'S1',
          '2027-03-07T00:40:00+00:00',
          '2027-03-07T02:00:00+00:00',
          '2027-03-07T03:00:00+00:00',
          '2027-03-07T05:10:00+00:00',
        ],
      ],
    ],
  ])('"%s" on a Saturday night', (text, result) => {
    expect(read(text, ...night)).toEqual(result);
  });

  it('takes the shorter isolation when clocks go back in it, and says so', () => {
    expect(read('S1 [01:30-05:10]', '2027-10-30T21:50Z', '2027-10-31T08:30Z')).toEqual([
      ['S1', '2027-10-31T01:30:00+00:00', '2027-10-31T05:10:00+00:00'],
      'time-happens-twice',
    ]);
    expect(read('S1 [00:30-01:30]', '2027-10-30T21:50Z', '2027-10-31T08:30Z')).toEqual([
      ['S1', '2027-10-31T00:30:00+01:00', '2027-10-31T01:30:00+01:00'],
      'time-happens-twice',
    ]);
  });

  it('refuses a time that clocks skip', () => {
    expect(read('S1 [01:30-05:10]', '2027-03-27T22:50Z', '2027-03-28T08:00Z')).toBe(
      'time-does-not-exist',
    );
  });

  // Friday 23:00 to Monday 03:00.
  const blockade = ['2027-07-23T22:00Z', '2027-07-26T02:00Z'] as const;

  it('comes again each night of a long blockade, cut to it, and says so', () => {
    expect(read('S1 [22:00-05:00]', ...blockade)).toEqual([
      [
        'S1',
        ...['2027-07-23T23:00:00+01:00', '2027-07-24T05:00:00+01:00'],
        ...['2027-07-24T22:00:00+01:00', '2027-07-25T05:00:00+01:00'],
        ...['2027-07-25T22:00:00+01:00', '2027-07-26T03:00:00+01:00'],
      ],
      'isolation-cut-to-window',
    ]);
    expect(read('S1 [23:30-02:30]', ...blockade)).toEqual([
      [
        'S1',
        ...['2027-07-23T23:30:00+01:00', '2027-07-24T02:30:00+01:00'],
        ...['2027-07-24T23:30:00+01:00', '2027-07-25T02:30:00+01:00'],
        ...['2027-07-25T23:30:00+01:00', '2027-07-26T02:30:00+01:00'],
      ],
    ]);
  });

  it('may carry several stretches with dates, and several times of day', () => {
    expect(
      read(
        'S1 [2027-07-24 23:30 - 2027-07-25 07:50]; S2; S1 [2027-07-23 23:30 - 2027-07-24 07:50]',
        ...blockade,
      ),
    ).toEqual([
      [
        'S1',
        ...['2027-07-23T23:30:00+01:00', '2027-07-24T07:50:00+01:00'],
        ...['2027-07-24T23:30:00+01:00', '2027-07-25T07:50:00+01:00'],
      ],
      ['S2'],
    ]);
    expect(read('S1 [12:00-13:00]; S1 [00:10-02:00]', ...blockade)).toHaveLength(1);
  });

  it.each([
    ['S1 [12:00-13:00]; S1 [12:59-14:00]', 'section-twice'],
    ['S1 [23:30-07:50]; S1 [2027-07-25 07:00 - 2027-07-25 08:00]', 'section-twice'],
    ['S1 [23:30-07:50]; S1', 'section-twice'],
    ['S1; S1 [23:30-07:50]', 'section-twice'],
    ['S1 [12:00-12:00]', 'isolation-not-read'],
    ['S1 [2027-07-26 01:00 - 2027-07-26 03:01]', 'isolation-outside-window'],
  ])('"%s" in a blockade is refused as %s', (text, code) => {
    expect(read(text, ...blockade)).toBe(code);
  });

  it('takes one night at its shorter reading, and refuses one that starts at a time skipped', () => {
    // Friday 23:00 to Monday 05:00 over each clock change.
    const [autumn, spring] = [
      ['2027-10-29T22:00Z', '2027-11-01T05:00Z'],
      ['2027-03-26T23:00Z', '2027-03-29T04:00Z'],
    ] as const;
    expect(read('S1 [01:30-04:00]', ...autumn)).toEqual([
      [
        'S1',
        ...['2027-10-30T01:30:00+01:00', '2027-10-30T04:00:00+01:00'],
        ...['2027-10-31T01:30:00+00:00', '2027-10-31T04:00:00+00:00'],
        ...['2027-11-01T01:30:00+00:00', '2027-11-01T04:00:00+00:00'],
      ],
      'time-happens-twice',
    ]);
    expect(read('S1 [01:30-04:00]', ...spring)).toBe('time-does-not-exist');
    expect(read('S1 [01:00-04:00]', ...spring)).toEqual([
      [
        'S1',
        ...['2027-03-27T01:00:00+00:00', '2027-03-27T04:00:00+00:00'],
        ...['2027-03-28T02:00:00+01:00', '2027-03-28T04:00:00+01:00'],
        ...['2027-03-29T01:00:00+01:00', '2027-03-29T04:00:00+01:00'],
      ],
      'time-at-clock-change',
    ]);
  });
});

describe('a list', () => {
  it('is split at ; and each name is there once', () => {
    expect(parseNames(' Up ;Down;;Up')).toEqual({ value: ['Up', 'Down'] });
  });
});

describe('a number', () => {
  it.each<[string, number | string]>([
    ['0', 0],
    ['8', 8],
    ['8.0', 8],
    ['+8', 8],
    ['8.5', 'not-a-whole-number'],
    ['1,000', 'not-a-whole-number'],
    ['1e3', 'not-a-whole-number'],
    ['0x10', 'not-a-whole-number'],
    ['-1', 'number-too-small'],
    ['99999999999', 'number-too-large'],
  ])('%s as a whole number', (text, result) => {
    expect(parseWhole(text, 0)).toMatchObject(
      typeof result === 'number' ? { value: result } : { problem: { code: result } },
    );
  });

  it.each<[string, number | string]>([
    ['12.5', 12.5],
    ['12,5', 12.5],
    ['-0.25', -0.25],
    ['1,500', 'number-reads-two-ways'],
    ['1,5,0', 'not-a-number'],
    ['Infinity', 'not-a-number'],
    ['', 'not-a-number'],
  ])('%s as a decimal', (text, result) => {
    expect(parseDecimal(text)).toMatchObject(
      typeof result === 'number' ? { value: result } : { problem: { code: result } },
    );
  });

  it.each<[string, number | string]>([
    ['£62.50', 62.5],
    ['1,200.50', 1200.5],
    ['€ 95', 95],
    ['-1', 'number-too-small'],
    ['1,200', 'number-reads-two-ways'],
  ])('%s as an amount', (text, result) => {
    expect(parseAmount(text)).toMatchObject(
      typeof result === 'number' ? { value: result } : { problem: { code: result } },
    );
  });
});

describe('a word', () => {
  it('is read whatever its case', () => {
    expect(parseFlag('YES')).toEqual({ value: true });
    expect(parseFlag('x')).toEqual({ value: true });
    expect(parseFlag('0')).toEqual({ value: false });
    expect(parsePlace('Outside')).toEqual({ value: 'outside' });
    expect(parseStatus('Cancelled')).toEqual({ value: 'withdrawn' });
  });

  it('that is not known is refused, also when it is a name every object has', () => {
    expect(parseFlag('maybe')).toMatchObject({ problem: { code: 'not-yes-or-no' } });
    expect(parseStatus('constructor')).toMatchObject({ problem: { code: 'status-not-known' } });
  });
});
