// Installs the pinned packages when they are absent or others than the lock file names.
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const root = dirname(dirname(fileURLToPath(import.meta.url)));

/** Which lock file the packages on the disk were installed by, and whether all of them are there. */
const mark = join(root, 'node_modules/.installed-by');

/** Runs a command in the project folder with its output shown. Ends this process when the command fails. */
export function run(command, args, extra = {}) {
  const done = spawnSync(command, args, {
    cwd: root,
    stdio: 'inherit',
    shell: process.platform === 'win32',
    ...extra,
    env: { ...process.env, ...extra.env },
  });
  if (done.status !== 0) process.exit(done.status ?? 1);
}

/** What is needed beside what the package itself depends on: to make and serve the page, or to share plans. */
const extras = {
  page: ['vite', 'esbuild'],
  share: ['esbuild', '@hocuspocus/server', 'classic-level', 'ws'],
};

/**
 * Goes by what the lock file says, not by its age: a checkout or a copy makes every file newer.
 *
 * @param need `page`, `share`: what that needs, and no tests, examples or frameworks; `all`: everything.
 */
export function install(need = 'all') {
  const wanted = createHash('sha256')
    .update(readFileSync(join(root, 'package-lock.json')))
    .digest('hex');
  const present = existsSync(join(root, 'node_modules/.package-lock.json'));
  const said = present && existsSync(mark) ? readFileSync(mark, 'utf8') : '';
  if (said === wanted || (said.startsWith(`${wanted} `) && said.includes(` ${need}`))) return;
  // Over packages that are there npm keeps what it finds, development's among them: all is the safe word then.
  if (need === 'all' || (present && !said.includes(' '))) {
    run('npm', ['ci', '--no-audit', '--no-fund']);
    writeFileSync(mark, wanted);
    return;
  }
  const { devDependencies } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));
  const before = Object.keys(extras).filter((one) => said.includes(` ${one}`));
  const needs = [...new Set([...before, need])];
  const names = new Set(needs.flatMap((one) => extras[one]));
  const named = [...names].map((name) => `${name}@${devDependencies[name]}`);
  const only = ['--no-save', '--save-prod', '--omit=dev', '--loglevel=error'];
  run('npm', ['install', ...only, '--no-audit', '--no-fund', ...named]);
  writeFileSync(mark, [wanted, ...needs].join(' '));
}
