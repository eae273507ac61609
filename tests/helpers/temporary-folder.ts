import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** Names under which a process finds its temporary folder. */
const names = ['TMPDIR', 'TEMP', 'TMP'] as const;

/**
 * Gives the workers of a test run a temporary folder of their own, and takes it away after the last test: a worker that
 * is ended from outside, or serves several files of tests, does not come to take away its own.
 */
export default function setup(): () => void {
  const folder = mkdtempSync(join(tmpdir(), 'possession-fit-tests-'));
  for (const name of names) process.env[name] = folder;
  return () => rmSync(folder, { recursive: true, force: true });
}
