// Installs the pinned packages when they are absent or others than the lock file names.
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const root = dirname(dirname(fileURLToPath(import.meta.url)));

/** Which lock file the packages on the disk were installed by. */
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

/** Goes by what the lock file says, not by its age: a checkout or a copy makes every file newer. */
export function install() {
  const wanted = createHash('sha256')
    .update(readFileSync(join(root, 'package-lock.json')))
    .digest('hex');
  const present = existsSync(join(root, 'node_modules/.package-lock.json'));
  if (present && existsSync(mark) && readFileSync(mark, 'utf8') === wanted) return;
  run('npm', ['ci', '--no-audit', '--no-fund']);
  writeFileSync(mark, wanted);
}
