// Bundles one kernel to node_modules/.cache and imports it, so that a bench needs no TypeScript runner.
import { mkdirSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

const root = dirname(dirname(dirname(fileURLToPath(import.meta.url))));

/** The exports of `src/planner/kernels/<name>.ts`, bundled afresh. */
export async function kernel(name) {
  const { build } = await import('esbuild');
  const outfile = join(
    root,
    'node_modules/.cache/possession-fit',
    `kernel-${name}.${process.pid}.mjs`,
  );
  mkdirSync(dirname(outfile), { recursive: true });
  await build({
    entryPoints: [join(root, 'src/planner/kernels', `${name}.ts`)],
    bundle: true,
    platform: 'node',
    format: 'esm',
    target: 'node20',
    outfile,
    logLevel: 'error',
  });
  return import(pathToFileURL(outfile).href);
}

/** Where the published problems lie: beside the repository, never inside it. */
export const published = join(root, '../shared/benchmarks');
