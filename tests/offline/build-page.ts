// The page as `npm start` builds it, once for all files of tests.
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build } from 'vite';
import type { TestProject } from 'vitest/node';

declare module 'vitest' {
  interface ProvidedContext {
    /** The folder of the built page. Nothing is written to it: a test that does so makes a copy. */
    builtPage: string;
  }
}

/** Builds the page before the first test and removes it after the last. */
export default async function buildPage(tests: TestProject): Promise<() => Promise<void>> {
  const folder = await mkdtemp(join(tmpdir(), 'possession-fit-page-'));
  const { NODE_ENV } = process.env;
  // The runner sets NODE_ENV to "test", by which libraries would be built as for development.
  process.env['NODE_ENV'] = 'production';
  await build({ configFile: 'vite.config.ts', logLevel: 'error', build: { outDir: folder } });
  process.env['NODE_ENV'] = NODE_ENV;
  tests.provide('builtPage', folder);
  return () => rm(folder, { recursive: true, force: true });
}
