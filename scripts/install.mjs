// Installs the pinned packages when they are absent or older than the lock file.
import { spawnSync } from 'node:child_process';
import { statSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const root = dirname(dirname(fileURLToPath(import.meta.url)));

const ageOf = (path) => statSync(join(root, path), { throwIfNoEntry: false })?.mtimeMs ?? 0;

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

export function install() {
  if (ageOf('node_modules/.package-lock.json') >= ageOf('package-lock.json')) return;
  run('npm', ['ci', '--no-audit', '--no-fund']);
}
