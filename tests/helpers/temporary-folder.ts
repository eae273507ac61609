import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';

const prefix = 'possession-fit-tests-';
/** Names under which a process finds its temporary folder. */
const names = ['TMPDIR', 'TEMP', 'TMP'] as const;

/**
 * Gives the workers of a test run a temporary folder of their own, and takes it away after the last test: a worker that
 * is ended from outside, or serves several files of tests, does not come to take away its own.
 */
export default function setup(): (() => void) | undefined {
  // Each project of a run asks for one: the first serves all.
  if (basename(tmpdir()).startsWith(prefix)) return undefined;
  const folder = mkdtempSync(join(tmpdir(), prefix));
  for (const name of names) process.env[name] = folder;
  return () => rmSync(folder, { recursive: true, force: true });
}
