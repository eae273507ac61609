// `share` as whoever runs it meets it. Only this machine's own address is spoken to.
import { spawn, spawnSync, type ChildProcess } from 'node:child_process';
import { cpSync, mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { createServer, type AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterEach, expect, it } from 'vitest';
import * as Y from 'yjs';
import { emptyPlan } from '../../../src/model/index.js';
import { OpenPlan } from '../../../src/plan/open.js';
import { cli, cliProcess, root } from '../../helpers/cli.js';
import { desk, until } from '../share/support/desk.js';

const folders: string[] = [];
const running: ChildProcess[] = [];
afterEach(() => {
  for (const item of running.splice(0)) item.kill('SIGKILL');
  for (const folder of folders.splice(0)) rmSync(folder, { recursive: true, force: true });
});

function newFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'possession-fit-share-'));
  folders.push(folder);
  return folder;
}

interface Run {
  readonly child: ChildProcess;
  readonly address: string;
  out(): string;
  ended(): Promise<number | null>;
}

async function run(folder: string, ...words: string[]): Promise<Run> {
  const child = spawn(
    'node',
    ['scripts/cli.mjs', 'share', '--folder', folder, '--port', '0', ...words],
    {
      cwd: root,
    },
  );
  running.push(child);
  let out = '';
  for (const stream of [child.stdout, child.stderr])
    stream.on('data', (data) => {
      out += String(data);
    });
  const ended = new Promise<number | null>((resolve) => child.once('exit', resolve));
  const started = await Promise.race([
    ended.then(() => false),
    (async () => {
      while (!out.includes('Ctrl+C')) await new Promise((done) => setTimeout(done, 20));
      return true;
    })(),
  ]);
  if (!started) throw new Error(`it ended: ${out}`);
  const address = /ws:\/\/127\.0\.0\.1:\d+/.exec(out)![0];
  return { child, address, out: () => out, ended: () => ended };
}

const tokensIn = (folder: string): { read: string; write: string } =>
  JSON.parse(readFileSync(join(folder, 'tokens.json'), 'utf8')) as { read: string; write: string };

it('tells the address, keeps tokens for their owner alone and out of what is not a terminal', async () => {
  const folder = newFolder();
  const { child, out, ended } = await run(folder);
  const tokens = tokensIn(folder);
  expect(tokens.read).toMatch(/^read-[\w-]{43}$/);
  expect(tokens.write).toMatch(/^write-[\w-]{43}$/);
  // What is long is broken at the end of a line.
  const told = out().replaceAll(/\s/g, '');
  expect(told).toContain(join(folder, 'tokens.json'));
  for (const token of Object.values(tokens)) expect(told).not.toContain(token);
  if (process.platform !== 'win32')
    expect(statSync(join(folder, 'tokens.json')).mode & 0o777).toBe(0o600);
  child.kill('SIGINT');
  expect(await ended()).toBe(0);
});

it('ends quietly at Ctrl+C, and has all that was written when it is started again', async () => {
  const folder = newFolder();
  const plan = OpenPlan.of(emptyPlan('Bridge deck', 'Europe/London'));
  const first = await run(folder);
  const tokens = tokensIn(folder);
  const one = desk(first.address, tokens.write, 'plan-1', { doc: plan.doc });
  await until(() => one.provider.isSynced, 'the plan taken');
  plan.change({ part: ['name'], value: 'Bridge deck, north' }, 'named');
  await until(() => !one.provider.hasUnsyncedChanges, 'the change taken');
  const before = first.out();
  first.child.kill('SIGINT');
  expect(await first.ended()).toBe(0);
  expect(first.out()).toBe(before);
  one.end();
  const second = await run(folder);
  expect(tokensIn(folder)).toEqual(tokens);
  const other = desk(second.address, tokens.read);
  await until(() => other.provider.isSynced, 'the plan from the disk');
  expect(OpenPlan.from([Y.encodeStateAsUpdate(other.doc)])?.document.name).toBe(
    'Bridge deck, north',
  );
});

it('writes new tokens where they are asked for', async () => {
  const folder = newFolder();
  const first = await run(folder);
  const before = tokensIn(folder);
  first.child.kill('SIGTERM');
  expect(await first.ended()).toBe(0);
  const second = await run(folder, '--new-tokens');
  const after = tokensIn(folder);
  expect(new Set([...Object.values(before), ...Object.values(after)]).size).toBe(4);
  const old = desk(second.address, before.write);
  await until(() => old.refused() !== '', 'the old token refused');
});

it('says in words why it cannot run', async () => {
  const taken = createServer().listen(0, '127.0.0.1');
  await new Promise((done) => taken.once('listening', done));
  const { port } = taken.address() as AddressInfo;
  const busy = cliProcess('share', '--folder', newFolder(), '--port', String(port));
  taken.close();
  expect(busy.code).toBe(1);
  expect(busy.stderr).toContain(`Port ${port} is taken`);
  const folder = newFolder();
  await run(folder);
  const second = cliProcess('share', '--folder', folder, '--port', '0');
  expect(second.code).toBe(1);
  expect(second.stderr).toContain('another server has it open');
  const damaged = newFolder();
  writeFileSync(join(damaged, 'tokens.json'), '{"read":"short"}');
  const third = cliProcess('share', '--folder', damaged, '--port', '0');
  expect(third.code).toBe(1);
  expect(third.stderr).toContain('--new-tokens');
  const file = join(newFolder(), 'file');
  writeFileSync(file, '');
  const fourth = cliProcess('share', '--folder', file, '--port', '0');
  expect(fourth.code).toBe(1);
  expect(fourth.stderr).not.toContain('    at ');
});

it.each([
  [['--port', '70000']],
  [['--port', 'x']],
  [['--origin', 'desk.example.org']],
  [['--origin', 'https://desk.example.org/path']],
  [['--redis', 'localhost']],
  [['--windows', 'a.csv']],
  [['now']],
])('refuses %j as wrong usage', (words) => {
  const { code, stderr } = cli('share', ...words);
  expect(code).toBe(2);
  expect(stderr).not.toContain('    at ');
});

it('tells which packages it needs where they are not installed', () => {
  cliProcess('--version');
  const folder = newFolder();
  const bundles = join(root, 'node_modules/.cache/possession-fit');
  for (const name of ['cli.mjs', 'share.mjs']) cpSync(join(bundles, name), join(folder, name));
  const done = spawnSync('node', [join(folder, 'cli.mjs'), 'share', '--folder', folder], {
    cwd: dirname(folder),
    encoding: 'utf8',
  });
  expect(done.status).toBe(1);
  const { devDependencies, peerDependencies } = JSON.parse(
    readFileSync(join(root, 'package.json'), 'utf8'),
  ) as Record<string, Record<string, string>>;
  for (const name of ['@hocuspocus/server', 'classic-level', 'ws']) {
    expect(done.stderr).toContain(`${name}@${peerDependencies![name]!}`);
    expect(devDependencies![name]).toBe(peerDependencies![name]);
  }
});
