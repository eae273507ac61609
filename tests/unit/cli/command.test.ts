// The command as a script meets it: help, standard input, pipes that close, text that steers a terminal.
import { spawnSync } from 'node:child_process';
import { linkSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { verbs } from '../../../src/cli/options.js';
import { version } from '../../../src/cli/version.js';
import { cautions } from '../../../src/model/index.js';
import { cli, cliProcess, files, root } from '../../helpers/cli.js';

const night =
  'window,start,end,lines,isolation,status\nN1,2027-03-06 22:00,2027-03-07 06:00,Up,,confirmed\n';
const sample = (name: string): string => join(root, 'sample-csv', name);
const command = `node ${join(root, 'scripts/cli.mjs')}`;
const shell = (line: string): ReturnType<typeof spawnSync> & { stderr: string; stdout: string } =>
  spawnSync('bash', ['-o', 'pipefail', '-c', line], { cwd: root, encoding: 'utf8' });

describe('the command line', () => {
  it.each(verbs)('tells what %s takes', (verb) => {
    const { code, stdout } = cli(verb, '--help');
    expect(code).toBe(0);
    expect(stdout).toMatch(new RegExp(`^${verb}: `));
    expect(stdout).toContain('--windows FILE');
    expect(stdout.split('\n').every((line) => line.length <= 100)).toBe(true);
  });

  it('tells its version, which is that of the package', () => {
    const { version: own } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as {
      version: string;
    };
    expect(version).toBe(own);
    expect(cliProcess('--version').stdout).toBe(`possession-fit ${own}\n`);
  });

  it('sets how its code is compiled, in flags that this Node knows', () => {
    expect(cliProcess('--version').stderr).toBe('');
    // A bundler leaves out an import for its effect alone, unless package.json tells of it.
    const bundle = readFileSync(join(root, 'node_modules/.cache/possession-fit/cli.mjs'), 'utf8');
    expect(bundle).toContain('setFlagsFromString(');
  });

  it('reads one table from standard input', () => {
    const done = spawnSync('node', ['scripts/cli.mjs', 'usable', '--windows', '-', '--json'], {
      cwd: root,
      encoding: 'utf8',
      input: night,
    });
    expect(JSON.parse(done.stdout)).toMatchObject({ windows: [{ usableMinutes: 480 }] });
    const twice = cliProcess('fit', '--windows', '-', '--work', '-');
    expect(twice.code).toBe(2);
    expect(twice.stderr).toContain('--windows and --work');
  });

  it('names standard input in a fault', () => {
    const done = spawnSync('node', ['scripts/cli.mjs', 'usable', '--windows', '-'], {
      cwd: root,
      encoding: 'utf8',
      input: night.replace('2027-03-07 06:00', 'soon'),
    });
    expect(done.status).toBe(1);
    expect(done.stderr).toContain('standard input, line 2, column "end"');
  });

  it('gives notes and cautions with every answer', () => {
    const { windows } = files({ windows: night });
    const answer = JSON.parse(cli('usable', '--windows', windows, '--json').stdout) as object;
    expect(answer).toMatchObject({ cautions });
    const { notes } = answer as { notes: { code: string }[] };
    expect(notes.map((note) => note.code)).toContain('no-rules');
    const unused = JSON.parse(
      cli('usable', '--windows', windows, '--seconds', '3', '--json').stdout,
    ) as { notes: { code: string }[] };
    expect(unused.notes.map((note) => note.code)).toContain('option-not-used');
  });

  it('ends quietly where the reader goes away', () => {
    const { stderr } = shell(
      `${command} usable --windows ${sample('windows.csv')} --rules ${sample('rules/third-rail.json')} --json | head -c 10`,
    );
    expect(stderr).toBe('');
  });

  it.runIf(process.platform === 'linux')('says so where the answer cannot be written', () => {
    const { windows } = files({ windows: night });
    const { status, stderr } = shell(`${command} usable --windows ${windows} --json > /dev/full`);
    expect(status).toBe(2);
    expect(stderr).toContain('could not be written');
    expect(stderr).not.toMatch(/^\s+at /m);
  });

  it.each(['99999999999999', '1e9', '-5', '0x10'])('refuses --runs %s in words', (runs) => {
    const { windows, work } = files({ windows: night, work: 'activity,minutes\nA,30\n' });
    const { code, stderr } = cli('handback', '--windows', windows, '--work', work, '--runs', runs);
    expect(code).toBe(2);
    expect(stderr).toContain('--runs');
    expect(stderr).not.toMatch(/^\s+at /m);
  });

  it('lets no cell steer the terminal, and keeps the cell in JSON', () => {
    const name = 'N\u001b[31m\u202e1';
    const { windows } = files({ windows: night.replace('N1', name) });
    const { stdout } = cli('usable', '--windows', windows);
    expect(stdout).not.toMatch(/[\u001b\u202e]/);
    const json = cli('usable', '--windows', windows, '--json').stdout;
    expect(json).not.toMatch(/[\u001b\u202e]/);
    expect((JSON.parse(json) as { windows: { window: string }[] }).windows[0]!.window).toBe(name);
  });

  it('keeps a fault line short enough to read', () => {
    const { windows } = files({ windows: night.replace('confirmed', 'x'.repeat(9_000)) });
    const { code, stderr } = cli('usable', '--windows', windows);
    expect(code).toBe(1);
    expect(Math.max(...stderr.split('\n').map((line) => line.length))).toBeLessThan(700);
    expect(stderr).toContain('characters more');
  });

  it('writes no calendar over an input, through a hard link either', () => {
    const { windows } = files({ windows: night });
    const link = `${windows}.ics`;
    linkSync(windows, link);
    const { code } = cli('book', '--windows', windows, '--calendar', link, '--at', '2027-01-01');
    expect(code).toBe(2);
    expect(readFileSync(windows, 'utf8')).toBe(night);
  });
});
