import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readWorkbook } from '../../../src/tables/workbook/read-workbook.js';
import { readArguments } from '../../../src/cli/arguments.js';
import { faultText } from '../../../src/engine/english/problems.js';
import { priceBookSchema } from '../../../src/model/price-book.js';
import { jsonFrom } from '../../../src/tables/index.js';
import { cli, files, type CliRun } from '../../helpers/cli.js';

// Constructed: a gang of one at 60 an hour, double on public holidays; the window ends on the day asked about.
const book = {
  schema: 1,
  name: 'Test book',
  currency: 'GBP',
  source: 'made for the test',
  standing: {
    labour: ['gang'],
    factors: [{ name: 'holiday', factor: '2', on: 'labour', holidaysOnly: true }],
  },
};

function priced(holidays: string | undefined): CliRun {
  const path = files({
    'windows.csv': 'window,start,end\nW1,2027-05-30 23:00,2027-05-31 05:00\n',
    'resources.csv': 'resource,capacity,rate per hour\ngang,1,60\n',
    'prices.json': JSON.stringify(book),
    ...(holidays !== undefined && { holidays }),
  });
  return cli(
    ...['price', '--windows', path['windows.csv'], '--resources', path['resources.csv']],
    ...['--prices', path['prices.json'], '--zone', 'Europe/London'],
    ...['--window', 'W1', '--minutes', '30', '--json'],
    ...(holidays === undefined ? [] : ['--holidays', path['holidays']!]),
  );
}
const total = (run: CliRun): string => {
  expect(run.stderr).toBe('');
  return (JSON.parse(run.stdout) as { total: string }).total;
};

describe('price on the command line', () => {
  it('takes public holidays a line or as JSON, and pays by them', () => {
    expect(total(priced(undefined))).toBe('30.00');
    expect(total(priced('# spring\n2027-05-31 # Monday\r\n\r\n'))).toBe('60.00');
    expect(total(priced('["2027-05-31", "2027-12-27"]'))).toBe('60.00');
    expect(total(priced('2027-05-03\n'))).toBe('30.00');
  });

  it('tells of every date it cannot read, with its line and how to mend it', () => {
    const run = priced('2027-05-31\n31/05/2027\n2027-02-29\n');
    expect(run.code).toBe(1);
    expect(run.stdout).toBe('');
    for (const part of ['line 2', '"31/05/2027"', 'line 3', '"2027-02-29"', '2027-08-30'])
      expect(run.stderr).toContain(part);
  });

  it('tells of JSON that is no array of dates', () => {
    for (const bad of ['{"days": []}', '["2027-05-31"', '[20270531]']) {
      const run = priced(bad);
      expect(run.code).toBe(1);
      expect(run.stderr).toContain('holidays');
    }
  });

  it('tells in text all that JSON tells of the ways to do the work', () => {
    const path = files({
      'windows.csv':
        'window,start,end\nW1,2027-05-30 23:00,2027-05-31 05:00\nW2,2027-06-06 23:00,2027-06-07 05:00\n',
      'work.csv':
        'package,activity,units,minutes per unit,key date\nDeck,A1,6,50,2027-06-01 12:00\n',
      'events.csv': 'event,chance,minutes,activity\nLate crane,40 %,100,A1\n',
      'prices.json': JSON.stringify({
        ...book,
        delay: { by: 'bands', bands: [{ afterMinutes: 0, rate: '100' }] },
      }),
    });
    const words = [
      ...['price', '--windows', path['windows.csv'], '--work', path['work.csv']],
      ...['--prices', path['prices.json'], '--risk', path['events.csv'], '--options'],
      ...['--zone', 'Europe/London', '--window', 'W1', '--minutes', '30'],
    ];
    const text = cli(...words).stdout;
    const { options } = JSON.parse(cli(...words, '--json').stdout) as {
      options: {
        notes: string[];
        options: { name: string; changes?: string[]; notes?: string[]; reason?: string }[];
      };
    };
    const told = [
      ...options.notes,
      ...options.options.flatMap(({ name, changes = [], notes = [], reason }) => [
        ...[name, ...changes, ...notes],
        ...(reason === undefined ? [] : [reason]),
      ]),
    ];
    for (const part of told) expect(text).toContain(part);
    // The report that is sent on tells it as well.
    const report = path['prices.json'].replace('prices.json', 'report.csv');
    expect(cli(...words, '--out', report).code).toBe(0);
    const sent = readFileSync(report, 'utf8');
    for (const part of told) expect(sent).toContain(part);
    const less = 'Key date of Deck, Tue 1 Jun 2027 12:00: met as planned, missed this way.';
    const cut =
      'Key date of Deck, Tue 1 Jun 2027 12:00: met as planned, missed in some simulated shifts.';
    for (const part of [less, cut]) expect(text).toContain(part);
  });

  it('prices a missed key date in a row of its own, and lists every key date of the plan', () => {
    const path = files({
      'windows.csv': 'window,start,end\nW1,2027-05-30 23:00,2027-05-31 05:00\n',
      'work.csv':
        'package,activity,minutes,key date\nDeck,A1,60,2027-05-31 05:20\nRail,B1,60,2027-05-29 12:00\n',
      'prices.json': JSON.stringify({
        ...book,
        keyDates: [
          { package: 'Deck', perDay: '1500', once: '5000', source: 'Constructed' },
          { perDay: '100' },
        ],
      }),
    });
    const run = cli(
      ...['price', '--windows', path['windows.csv'], '--work', path['work.csv']],
      ...['--prices', path['prices.json'], '--zone', 'Europe/London'],
      ...['--window', 'W1', '--minutes', '30', '--runs', '200', '--json'],
    );
    expect(run.stderr).toBe('');
    const out = JSON.parse(run.stdout) as {
      total: string;
      rows: { head: string; code: string; amount: string }[];
      keyDates: Record<string, unknown>[];
    };
    const rows = out.rows.filter((row) => row.head === 'key-dates');
    expect(rows.map(({ code, amount }) => [code, amount])).toEqual([
      ['key-date-Deck-2027-05-31', '6500.00'],
      ['key-date-planned-Rail-2027-05-29', '200.00'],
      ['key-date-Rail-2027-05-29', '0.00'],
    ]);
    expect(out.total).toBe('6700.00');
    expect(out.keyDates).toMatchObject([
      { package: 'Deck', due: '2027-05-31T05:20:00+01:00', daysLate: 0, amount: '0.00' },
      { package: 'Rail', window: 'W1', daysLate: 2, amount: '200.00' },
    ]);
  });

  interface Several {
    total?: string;
    overruns: { minutes: number; total: string; rows: { code: string; amount: string }[] }[];
    notPriced: string[];
    notes: { code: string; text: string }[];
  }
  const several = (minutes: string, prices: unknown = book): CliRun => {
    const path = files({
      'windows.csv': 'window,start,end\nW1,2027-05-30 23:00,2027-05-31 05:00\n',
      'resources.csv': 'resource,capacity,rate per hour\ngang,1,60\n',
      'prices.json': JSON.stringify(prices),
    });
    return cli(
      ...['price', '--windows', path['windows.csv'], '--resources', path['resources.csv']],
      ...['--prices', path['prices.json'], '--zone', 'Europe/London'],
      ...['--window', 'W1', '--minutes', minutes, '--json'],
    );
  };

  it('lays several overruns side by side, each as it is alone', () => {
    const run = several('45,180, 90');
    expect(run.stderr).toBe('');
    const out = JSON.parse(run.stdout) as Several;
    expect(out.overruns.map((overrun) => [overrun.minutes, overrun.total])).toEqual([
      [45, '45.00'],
      [180, '180.00'],
      [90, '90.00'],
    ]);
    expect(out.total).toBeUndefined();
    expect(out.notPriced.join()).toContain('Delay to trains is not priced');
    expect(out.notes.map((note) => note.code)).toContain('price-assumed');
    const alone = JSON.parse(several('90').stdout) as Several;
    expect(alone.total).toBe('90.00');
    expect(alone.overruns).toEqual([out.overruns[2]]);
  });

  const minutesOf = (text: string): readonly number[] | undefined =>
    readArguments(['price', '--windows', 'w.csv', '--window', 'W1', `--minutes=${text}`]).minutes;

  it('refuses minutes that are none, or longer than a week', () => {
    for (const bad of ['1000000000', '1e9', '10081', '45,', '45,,90', ' ', '45 90', '-1', '1.5'])
      expect(() => minutesOf(bad), bad).toThrow('--minutes takes whole minutes from 0 to 10080');
    expect(() => minutesOf('45,,90')).toThrow('one of them is blank');
    expect(() => minutesOf(Array.from({ length: 49 }, (_, i) => i).join(','))).toThrow(
      'at most 48',
    );
    expect(several('45,').code).toBe(2);
  });

  it('takes each length once, in the order typed', () => {
    expect(minutesOf('90, 45,90,00045,0')).toEqual([90, 45, 0]);
    expect(minutesOf('10080')).toEqual([10080]);
  });

  const fixed = (code: string) => ({ code, name: 'A', afterMinutes: 1, amount: '1' });
  it.each([
    [{ currency: 'gbp' }, 'entry "currency": "gbp" is not a currency', 'such as GBP'],
    [{ currency: '€' }, 'entry "currency": "€" is not', 'three capital letters'],
    [{ delay: { by: 'x' } }, 'entry "delay.by": "x"', 'train, bands'],
    [{ delay: { by: 'train', rate: '£62' } }, 'entry "delay.rate": "£62"', 'such as 71.43'],
    [{ delay: { by: 'train', rate: { perMinutes: 60 } } }, 'entry "delay.rate.amount"', 'missing'],
    [
      { delay: { by: 'train', rate: { amount: '5', per: 60 } } },
      'entry "delay.rate.per"',
      'not an entry',
    ],
    [{ delay: { by: 'train', rate: -5 } }, 'entry "delay.rate": -5 is too small', 'at least 0'],
    [
      { delay: { by: 'train', rate: '5', deemedMinutes: 4 } },
      'entry "delay"',
      'deemedMinutes may not be less than cancelAfterMinutes',
    ],
    [{ basis: 'damages' }, 'entry "damages"', 'basis is damages'],
    [
      { restriction: { minutesLostPerTrain: '2', liftedAfterMinutes: 5 } },
      'entry "restriction.rate"',
      'no rate by train',
    ],
    [
      { standing: { factors: [{ name: 'n', factor: '1', from: '25:00', to: '01:00' }] } },
      'entry "standing.factors[0].from": "25:00"',
      'a time of day such as 23:00',
    ],
    [{ keyDates: [{}] }, 'entry "keyDates[0]"', 'perDay, once or both'],
    [{ keyDates: [{ once: 1 }, { once: 2 }] }, 'entry "keyDates[1]"', 'without a package'],
    [{ fixed: [fixed('a'), fixed('a')] }, 'entry "fixed[1].code"', '"a" is that of fixed[0]'],
    [{ delay: { by: 'bands', bands: [] } }, 'entry "delay.bands"', 'at least 1'],
    [{ fixed: {} }, 'entry "fixed"', 'list in square brackets'],
  ])('says what is wrong with a price book, and where: %j', (more, place, words) => {
    const { faults } = jsonFrom(
      JSON.stringify({ ...book, ...more }),
      'prices.json',
      'prices',
      priceBookSchema,
    );
    const text = faults.map((fault) => faultText(fault)).join('\n');
    expect(text).toContain(`prices.json, ${place}`);
    expect(text).toContain(words);
  });

  // Virginia's kind of charge (workzonesafety.org, excerpt): quarters of an hour for two hours, hours after that. The rate
  // is constructed, 4,000 an hour, and the sums are worked out by hand.
  it('charges a late opening schedule that a user put in the price book', () => {
    const schedule = {
      ...book,
      currency: 'USD',
      standing: undefined,
      lateOpening: [
        {
          code: 'lane',
          name: 'Late opening of a lane',
          rate: { amount: '4000', perMinutes: 60 },
          intervalMinutes: 15,
          bands: [{ afterMinutes: 0 }, { afterMinutes: 120, intervalMinutes: 60 }],
        },
      ],
    };
    const run = several('0,1,15,16,30,31,60,61,95,120,121,180,181', schedule);
    const out = JSON.parse(run.stdout) as Several;
    const charged = out.overruns.map(
      (overrun) => overrun.rows.find((row) => row.code === 'lane')!.amount,
    );
    expect(charged).toEqual(
      [0, 1, 1, 2, 2, 3, 4, 5, 7, 8, 12, 12, 16].map((thousands) => `${thousands * 1000}.00`),
    );
  });

  it('says what the next minute costs, and of what the figures of risk are', () => {
    const out = JSON.parse(several('45').stdout) as {
      nextMinute: { after: number; one: string; meanOfFifteen: string };
      risk: unknown;
    };
    // One of a gang at 60 an hour.
    expect(out.nextMinute).toEqual({ after: 45, one: '1.00', meanOfFifteen: '1.00' });
    expect(out.risk).toBeNull();
  });

  // Constructed: a withdrawn window, one without work, and work that may run late in the third.
  const planned = {
    'windows.csv':
      'window,start,end,status\nW1,2027-05-30 23:00,2027-05-31 05:00,confirmed\nW2,2027-06-06 23:00,2027-06-07 05:00,confirmed\nW3,2027-06-13 23:00,2027-06-14 05:00,withdrawn\n',
    'work.csv':
      'package,activity,minutes low,minutes,minutes high,resources,window\nDeck,A1,200,300,420,gang:1,W1\n',
    'resources.csv': 'resource,capacity,rate per hour\ngang,1,60\n',
    'prices.json': JSON.stringify({ ...book, booking: { perHour: '500' } }),
    'out.csv': '',
  };
  const pricedWork = (window: string, ...more: string[]): CliRun => {
    const path = files(planned);
    const run = cli(
      ...['price', '--windows', path['windows.csv'], '--work', path['work.csv']],
      ...['--resources', path['resources.csv'], '--prices', path['prices.json']],
      ...['--zone', 'Europe/London', '--window', window, '--minutes', '30', '--runs', '400'],
      ...['--json', '--out', path['out.csv'], ...more],
    );
    expect(run.stderr).toBe('');
    return { ...run, stderr: readFileSync(path['out.csv'], 'utf8') };
  };

  it('says that a window is withdrawn, or that nothing is planned in it', () => {
    const codes = (window: string): string[] =>
      (JSON.parse(pricedWork(window).stdout) as Several).notes.map((note) => note.code);
    expect(codes('W3')).toEqual(
      expect.arrayContaining(['window-withdrawn', 'window-without-work']),
    );
    const empty = pricedWork('W2', '--options');
    expect((JSON.parse(empty.stdout) as { options: unknown }).options).toBeNull();
    expect(empty.stdout).toContain('The plan of work places nothing in W2');
  });

  it('works out the ways out too, with break-evens, in JSON and in the report', () => {
    const run = pricedWork('W1', '--options');
    const out = JSON.parse(run.stdout) as {
      risk: { of: string; expectedCost: string };
      options: {
        cheapest: string;
        options: { id: string; parts?: { part: string; amount: string }[] }[];
        breakEvens: { text: string }[];
      };
      notes: { code: string }[];
    };
    expect(out.notes.map((note) => note.code)).not.toContain('window-without-work');
    const asPlanned = out.options.options[0]!;
    expect(asPlanned.id).toBe('as-planned');
    // The same book prices the overrun in both, under luck of their own.
    const overrun = Number(asPlanned.parts!.find((part) => part.part === 'overrun')!.amount);
    expect(Math.abs(overrun - Number(out.risk.expectedCost))).toBeLessThan(2);
    expect(out.options.breakEvens.length).toBeGreaterThan(0);
    expect(out.risk.of).toContain('Shifts that end on time count too');
    expect(run.stderr).toContain(
      out.options.breakEvens[0]!.text.slice(0, 20).replaceAll('"', '""'),
    );
    expect(run.stderr).toContain('P95 total');
  });

  describe('--out', () => {
    const asked = (out: string): CliRun => {
      const path = files({
        'windows.csv': 'window,start,end\nW1,2027-05-30 23:00,2027-05-31 05:00\n',
        'resources.csv': 'resource,capacity,rate per hour\ngang,1,60\n',
        'prices.json': JSON.stringify(book),
      });
      return cli(
        ...['price', '--windows', path['windows.csv'], '--resources', path['resources.csv']],
        ...['--prices', path['prices.json'], '--zone', 'Europe/London'],
        ...['--window', 'W1', '--minutes', '30,90', '--json', '--out', out],
      );
    };

    it('writes what the answer says as CSV and as a workbook, with notes and cautions', async () => {
      const path = files({ 'out.csv': '', 'out.xlsx': '' });
      for (const name of ['out.csv', 'out.xlsx'] as const) expect(asked(path[name]).code).toBe(0);
      const csv = readFileSync(path['out.csv'], 'utf8');
      for (const words of ['Total of what is counted,30.00,90.00', 'Booked end', 'Not priced,'])
        expect(csv).toContain(words);
      expect(csv).toContain('A planning aid. It is not a permit');
      const { sheets } = await readWorkbook(readFileSync(path['out.xlsx']));
      expect(sheets[1]!.rows.at(-1)!.cells.slice(0, 3)).toEqual([
        'Total of what is counted',
        '30',
        '90',
      ]);
    });

    it('is refused for another ending, a folder that is not there, another verb', () => {
      for (const [out, words] of [
        ['cost.pdf', '.csv or .xlsx'],
        ['-', '.csv or .xlsx'],
        ['/no/such/folder/cost.csv', 'no such folder'],
      ] as const) {
        const run = asked(out);
        expect([run.code, run.stdout]).toEqual([2, '']);
        expect(run.stderr).toContain(words);
      }
      const path = files({ 'windows.csv': 'window,start,end\nW1,2027-05-30,2027-05-31\n' });
      const other = cli('usable', '--windows', path['windows.csv'], '--out', 'x.csv');
      expect([other.code, other.stderr.includes('usable takes no --out')]).toEqual([2, true]);
    });
  });
});
