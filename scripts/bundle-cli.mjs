// The command line as one file, so that it starts at once and needs no installed library.
import { join } from 'node:path';
import { build } from 'esbuild';

/** @param outfile Where the bundle is written; the folder is made. */
export async function bundleCli(root, outfile, banner = '') {
  await build({
    entryPoints: [join(root, 'src/cli.ts')],
    bundle: true,
    platform: 'node',
    format: 'esm',
    target: 'node20',
    outfile,
    logLevel: 'error',
    banner: {
      js: `${banner}import { createRequire as requireFrom } from 'node:module'; const require = requireFrom(import.meta.url);`,
    },
  });
}
