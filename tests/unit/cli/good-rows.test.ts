// One bad row must not mean no answer: the rest is answered, the row is named, and the exit code is that of bad input.
import { describe, expect, it } from 'vitest';
import { cli, files, type CliRun } from '../../helpers/cli.js';

const texts = {
  'windows.csv': `window,start,end,lines,isolation,status
W1,2027-02-06 23:00,2027-02-07 07:00,Up,,requested
W2,2027-02-31 23:00,2027-03-01 07:00,Up,,confirmed
`,
  'work.csv': `activity,package,after,minutes,lines,isolation
A,P,,60,Up,
B,P,,1 hour and a bit,Up,
C,Q,B,30,Up,
D,R,,30,Up,
`,
};
const run = (verb: string, ...more: string[]): CliRun => {
  const path = files(texts);
  const given = ['--windows', path['windows.csv'], '--work', path['work.csv']];
  return cli(verb, ...given, ...more);
};

interface Json {
  readonly notes: readonly {
    readonly code: string;
    readonly text: string;
    readonly count: number;
  }[];
  readonly fits: readonly {
    readonly package: string;
    readonly fits: boolean;
    readonly status: string;
  }[];
}

describe('a file with a bad row', () => {
  it('answers from the good rows, names the bad ones and what went with them, and exits 1', () => {
    const { code, stdout, stderr } = run('fit', '--json');
    expect(code).toBe(1);
    expect(stderr).toMatch(/windows\.csv, line 3, column "start": .*Mend: /);
    expect(stderr).toMatch(/work\.csv, line 3, column "minutes"/);
    const { notes, fits } = JSON.parse(stdout) as Json;
    const left = notes.filter((note) => note.code === 'rows-left-out');
    expect(left.map((item) => item.count)).toEqual([1, 2]);
    expect(left[0]!.text).toContain('W2');
    expect(left[1]!.text).toContain('left out: B.');
    expect(left[1]!.text).toContain('because of others: C.');
    expect(fits.find((fit) => fit.package === 'R')).toMatchObject({
      fits: true,
      status: 'requested',
    });
  });

  it('never says that a package fits of which a row was left out', () => {
    const { fits } = JSON.parse(run('fit', '--json').stdout) as Json;
    expect(fits.find((fit) => fit.package === 'P')!.fits).toBe(false);
  });

  it('is answered as text too, with a note', () => {
    const { code, stdout } = run('allocate', '--seconds', '0.2');
    expect(code).toBe(1);
    expect(stdout).toContain('note: 1 row of windows has an error and is left out: W2.');
  });

  it('gives no answer where it is asked to be strict', () => {
    const { code, stdout } = run('fit', '--json', '--strict');
    expect(code).toBe(1);
    expect(stdout).toBe('');
  });

  it('gives no answer where a column that is needed is not there, or a heading may hold who is in danger', () => {
    for (const heading of ['window,start', 'window,start,end,Stretch']) {
      const path = files({
        'windows.csv': `${heading}\nW1,2027-02-06 23:00,2027-02-07 07:00,Up\n`,
      });
      const { code, stdout } = cli('usable', '--windows', path['windows.csv'], '--json');
      expect(code).toBe(1);
      expect(stdout).toBe('');
    }
  });

  it('is quiet and exits 0 where a bad row is mended', () => {
    const path = files({ 'windows.csv': texts['windows.csv'].replace('02-31', '02-28') });
    const { code, stdout } = cli('usable', '--windows', path['windows.csv'], '--json');
    expect(code).toBe(0);
    expect(stdout).not.toContain('rows-left-out');
  });
});
