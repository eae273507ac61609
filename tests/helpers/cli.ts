import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll } from 'vitest';

export const root = fileURLToPath(new URL('../..', import.meta.url));

export interface CliRun {
  readonly code: number | null;
  readonly stdout: string;
  readonly stderr: string;
}

/** Runs the command line as a script would, in the project folder. */
export function cli(...words: string[]): CliRun {
  const done = spawnSync('node', ['scripts/cli.mjs', ...words], { cwd: root, encoding: 'utf8' });
  return { code: done.status, stdout: done.stdout, stderr: done.stderr };
}

const folders: string[] = [];
afterAll(() => {
  for (const folder of folders) rmSync(folder, { recursive: true, force: true });
});

/** Writes texts or bytes to files in a folder of their own and gives their paths. */
export function files<T extends Record<string, string | Uint8Array>>(
  texts: T,
): { [K in keyof T]: string } {
  const folder = mkdtempSync(join(tmpdir(), 'possession-fit-'));
  folders.push(folder);
  return Object.fromEntries(
    Object.entries(texts).map(([name, text]) => {
      const path = join(folder, name);
      writeFileSync(path, text);
      return [name, path];
    }),
  ) as { [K in keyof T]: string };
}
