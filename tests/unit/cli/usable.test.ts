import { describe, expect, it } from 'vitest';
import { cli, files } from '../../helpers/cli.js';

interface UsableJson {
  windows: {
    window: string;
    startsAt: string;
    endsAt: string;
    grossMinutes: number;
    usableMinutes: number;
    ledger: {
      rule: string;
      kind: string;
      from: string;
      to: string;
      minutes: number;
      why: string;
    }[];
  }[];
}

function usable(windows: string, rules: unknown, ...more: string[]): UsableJson['windows'] {
  const path = files({ 'windows.csv': windows, 'rules.json': JSON.stringify(rules) });
  const run = cli(
    'usable',
    '--windows',
    path['windows.csv'],
    '--rules',
    path['rules.json'],
    '--zone',
    'Europe/London',
    '--json',
    ...more,
  );
  expect(run.stderr).not.toContain('error:');
  expect(run.code).toBe(0);
  return (JSON.parse(run.stdout) as UsableJson).windows;
}

const none = { schema: 1, name: 'none' };

describe('usable on the command line', () => {
  // Summer Time Order 2002 (SI 2002/262): 28 March and 31 October 2027. Elapsed hours: tz database.
  it('counts 420 gross minutes from 01:00 to 09:00 on the spring night and 540 on the autumn night', () => {
    const [spring, autumn] = usable(
      'window,start,end\nS,2027-03-28 01:00,2027-03-28 09:00\nA,2027-10-31 01:00,2027-10-31 09:00\n',
      none,
    );
    expect(spring).toMatchObject({
      grossMinutes: 420,
      usableMinutes: 420,
      startsAt: '2027-03-28T02:00:00+01:00',
      endsAt: '2027-03-28T09:00:00+01:00',
    });
    expect(autumn).toMatchObject({
      grossMinutes: 540,
      usableMinutes: 540,
      startsAt: '2027-10-31T01:00:00+01:00',
    });
  });

  it('takes the reading that gives the shorter window inside the doubled hour, and says so', () => {
    const path = files({
      'windows.csv':
        'window,start,end\nA,2027-10-31 01:30,2027-10-31 05:30\nB,2027-10-31 01:30+01:00,2027-10-31 05:30\n',
    });
    const run = cli(
      'usable',
      '--windows',
      path['windows.csv'],
      '--zone',
      'Europe/London',
      '--json',
    );
    expect(run.code).toBe(0);
    expect(
      (JSON.parse(run.stdout) as UsableJson).windows.map((window) => window.grossMinutes),
    ).toEqual([240, 300]);
    expect(run.stderr).toMatch(/windows\.csv, line 2, column "start"/);
  });

  it('refuses a time that clocks skip', () => {
    const path = files({
      'windows.csv': 'window,start,end\nS,2027-03-28 01:30,2027-03-28 09:00\n',
    });
    const run = cli(
      'usable',
      '--windows',
      path['windows.csv'],
      '--zone',
      'Europe/London',
      '--json',
    );
    expect(run.code).toBe(1);
    expect(run.stderr).toMatch(/line 2, column "start"/);
  });

  it('sums the ledger to the gross, in time order and without a hole', () => {
    const rules = {
      schema: 1,
      name: 'test',
      leadIn: [
        { step: 'Take possession', minutes: 30 },
        { step: 'Isolate', minutes: 45, when: 'isolation' },
      ],
      leadOut: [{ step: 'Inspect', minutes: 30 }],
      margin: { minutes: 45 },
      curfews: [{ name: 'Night', bars: 'loud', from: '02:00', to: '03:00' }],
    };
    const csv = 'window,start,end,isolation\nW,2027-02-06 23:00,2027-02-07 07:00,S1\n';
    const kindsOf = (...more: string[]): [string, number][] => {
      const [window] = usable(csv, rules, ...more);
      expect(window!.ledger.reduce((sum, row) => sum + row.minutes, 0)).toBe(480);
      window!.ledger.slice(1).forEach((row, i) => expect(row.from).toBe(window!.ledger[i]!.to));
      return window!.ledger.map((row) => [row.kind, row.minutes]);
    };
    expect(kindsOf()).toEqual([
      ['lead-in', 30],
      ['usable', 375],
      ['lead-out', 30],
      ['margin', 45],
    ]);
    expect(kindsOf('--isolation', 'S1')).toEqual([
      ['lead-in', 30],
      ['lead-in', 45],
      ['usable', 330],
      ['lead-out', 30],
      ['margin', 45],
    ]);
    expect(kindsOf('--loud')).toEqual([
      ['lead-in', 30],
      ['usable', 150],
      ['curfew', 60],
      ['usable', 165],
      ['lead-out', 30],
      ['margin', 45],
    ]);
  });

  it('says what is wrong with the command and exits 2', () => {
    expect(cli('usable').code).toBe(2);
    expect(cli('wonder', '--windows', 'x').stderr).toContain('unknown verb "wonder"');
    expect(cli('usable', '--windows', 'no-such-file.csv').code).toBe(2);
  });

  it('names file, line, column and how to mend a bad row, and exits 1', () => {
    const path = files({
      'windows.csv':
        'window,start,end\nW1,2027-02-06 23:00,2027-02-07 07:00\nW2,2027-02-31 23:00,2027-03-01 07:00\n',
    });
    const run = cli('usable', '--windows', path['windows.csv']);
    expect(run.code).toBe(1);
    expect(run.stderr).toMatch(/windows\.csv, line 3, column "start": .*Mend: /);
  });
});
