import { describe, expect, it } from 'vitest';
import { cli, files } from '../../helpers/cli.js';

const s = (name: string): string => `sample-csv/${name}`;
const windows = ['--windows', s('windows.csv')];

describe('people on the command line', () => {
  it('gives every breach with its source and the smallest change, and the crews of each window', () => {
    const { code, stdout } = cli('people', ...windows, '--roster', s('roster.csv'), '--json');
    expect(code).toBe(0);
    const answer = JSON.parse(stdout) as {
      breaches: { turn: string; mend: { minutes?: number }; source: string; sureness: string }[];
      windows: { window: string; crewsNeeded: number }[];
      together: { left: number };
    };
    expect(answer.breaches.length).toBe(16);
    expect(answer.breaches[0]).toMatchObject({
      turn: 'A2.3',
      mend: { change: 'finish earlier', minutes: 15 },
      sureness: 'read second-hand',
    });
    expect(answer.windows.find((window) => window.window === 'B52')!.crewsNeeded).toBe(2);
    expect(answer.together.left).toBe(0);
  });

  it('exits with 1 and the line for a roster that cannot be read, with 2 without one', () => {
    const { roster } = files({ roster: 'crew,start,end\nA,2027-03-06 22:00,2027-03-06 06:00\n' });
    const bad = cli('people', ...windows, '--roster', roster);
    expect([bad.code, bad.stderr]).toEqual([1, expect.stringContaining('line 2, column "end"')]);
    expect(cli('people', ...windows).code).toBe(2);
  });
});

describe('noise and lifting on the command line', () => {
  it('give levels against limits, and dates to apply by', () => {
    const { code, stdout } = cli(
      'noise',
      ...windows,
      '--work',
      s('work.csv'),
      '--plant',
      s('plant-noise.csv'),
      '--site',
      s('site.json'),
      '--at',
      '2027-02-20 09:00',
      '--json',
    );
    expect(code).toBe(0);
    const answer = JSON.parse(stdout) as {
      activities: { activity: string; periods: { period: string; mayBeLoud: boolean }[] }[];
      consent: { window: string; state: string }[];
    };
    const crossing = answer.activities.find((activity) => activity.activity === 'LC10')!;
    expect(crossing.periods.map((period) => [period.period, period.mayBeLoud])).toEqual([
      ['Day', true],
      ['Evening', true],
      ['Night', false],
    ]);
    expect(answer.consent.find((item) => item.window === 'N03')!.state).toBe('too late');
  });

  it('give hours lost and the moment concrete is ready', () => {
    const { code, stdout } = cli(
      'lifting',
      ...windows,
      '--work',
      s('work.csv'),
      '--forecast',
      s('forecast.csv'),
      '--temperatures',
      s('temperatures.csv'),
      '--site',
      s('site.json'),
      '--pour',
      'BD90',
      '--at',
      '2027-07-25 18:00',
      '--json',
    );
    expect(code).toBe(0);
    const answer = JSON.parse(stdout) as {
      windows: { window: string; lostMinutes: number }[];
      pours: { readyAt: string }[];
    };
    expect(answer.windows).toMatchObject([{ window: 'B52', lostMinutes: 770 }]);
    expect(answer.pours[0]!.readyAt).toBe('2027-07-28T11:06:00+01:00');
  });

  it('refuse a site that lacks a figure, with the place in the file', () => {
    const { site } = files({ site: '{ "concrete": { "maturity": 500 } }' });
    const bad = cli('people', ...windows, '--roster', s('roster.csv'), '--site', site);
    expect([bad.code, bad.stderr]).toEqual([1, expect.stringContaining('concrete.model')]);
  });
});
