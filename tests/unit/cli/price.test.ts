import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readWorkbook } from '../../../src/tables/workbook/read-workbook.js';
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
  } as Record<string, string>);
  return cli(
    ...['price', '--windows', path['windows.csv']!, '--resources', path['resources.csv']!],
    ...['--prices', path['prices.json']!, '--zone', 'Europe/London'],
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
      ...['price', '--windows', path['windows.csv']!, '--work', path['work.csv']!],
      ...['--prices', path['prices.json']!, '--zone', 'Europe/London'],
      ...['--window', 'W1', '--minutes', '30', '--runs', '200', '--json'],
    );
    expect(run.stderr).toBe('');
    const out = JSON.parse(run.stdout) as {
      total: string;
      rows: { head: string; code: string; amount: string }[];
      keyDates: Record<string, unknown>[];
    };
    const rows = out.rows.filter((one) => one.head === 'key-dates');
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
      ...['price', '--windows', path['windows.csv']!, '--resources', path['resources.csv']!],
      ...['--prices', path['prices.json']!, '--zone', 'Europe/London'],
      ...['--window', 'W1', '--minutes', minutes, '--json'],
    );
  };

  it('lays several overruns side by side, each as it is alone', () => {
    const run = several('45,180, 90');
    expect(run.stderr).toBe('');
    const out = JSON.parse(run.stdout) as Several;
    expect(out.overruns.map((one) => [one.minutes, one.total])).toEqual([
      [45, '45.00'],
      [180, '180.00'],
      [90, '90.00'],
    ]);
    expect(out.total).toBeUndefined();
    expect(out.notPriced.join()).toContain('Delay to trains is not priced');
    expect(out.notes.map((one) => one.code)).toContain('price-assumed');
    const alone = JSON.parse(several('90').stdout) as Several;
    expect(alone.total).toBe('90.00');
    expect(alone.overruns).toEqual([out.overruns[2]]);
  });

  it('refuses minutes that are none, or longer than a week', () => {
    for (const bad of ['1000000000', '10081', '45,', '45,x', '-1', '1.5']) {
      const run = several(bad);
      expect([bad, run.code, run.stdout]).toEqual([bad, 2, '']);
      expect(run.stderr).toContain('--minutes');
    }
    expect(several('10080').code).toBe(0);
  });

  it.each([
    [{ currency: 'gbp' }, 'currency', 'three capital letters such as GBP'],
    [{ delay: { by: 'x' } }, 'delay.by', 'train, bands'],
    [{ delay: { by: 'train', rate: 'abc' } }, 'delay.rate', 'a plain decimal number such as 71.43'],
    [{ basis: 'damages' }, 'prices.json', 'damages must be given'],
    [
      { standing: { factors: [{ name: 'n', factor: '1', from: '25:00', to: '01:00' }] } },
      'standing.factors[0].from',
      'a time of day such as 23:00',
    ],
    [{ keyDates: [{}] }, 'keyDates[0]', 'perDay, once or both'],
    [{ delay: { by: 'bands', bands: [] } }, 'delay.bands', 'at least 1'],
    [{ fixed: {} }, 'fixed', 'list in square brackets'],
  ])('says what is wrong with a price book, and where: %j', (more, place, words) => {
    const run = several('5', { ...book, ...more });
    expect(run.code).toBe(1);
    expect(run.stderr).toContain(place);
    expect(run.stderr).toContain(words);
    expect(run.stderr).not.toContain('different value');
  });

  describe('--out', () => {
    const asked = (out: string): CliRun => {
      const path = files({
        'windows.csv': 'window,start,end\nW1,2027-05-30 23:00,2027-05-31 05:00\n',
        'resources.csv': 'resource,capacity,rate per hour\ngang,1,60\n',
        'prices.json': JSON.stringify(book),
      });
      return cli(
        ...['price', '--windows', path['windows.csv']!, '--resources', path['resources.csv']!],
        ...['--prices', path['prices.json']!, '--zone', 'Europe/London'],
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
