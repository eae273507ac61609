// The command line as one file, so that it starts at once and needs no installed library; and beside it the server of
// `share`, which needs libraries of its own and is loaded by that verb alone.
import { join } from 'node:path';
import { build } from 'esbuild';

const common = {
  bundle: true,
  platform: 'node',
  format: 'esm',
  target: 'node20',
  logLevel: 'error',
  // Names stay, so that what nobody foresaw can be found by its stack.
  minifyWhitespace: true,
  minifySyntax: true,
};

/** For libraries that ask for parts of Node by `require`: it stands at the head of a module. */
const requireHere =
  "import { createRequire as requireFrom } from 'node:module'; const require = requireFrom(import.meta.url);";

/** Settings of esbuild for a module that runs in Node by itself: the command line, or a part of the core. */
export const nodeBundle = { ...common, banner: { js: requireHere } };

/** @param files Where the two bundles are written, in one folder; it is made. */
export async function bundleCli(root, files, banner = '') {
  await Promise.all([
    build({
      ...common,
      entryPoints: [join(root, 'src/cli.ts')],
      outfile: files.cli,
      banner: { js: `${banner}${requireHere}` },
    }),
    build({
      ...common,
      entryPoints: [join(root, 'src/share/index.ts')],
      outfile: files.share,
      // The libraries of sharing must be there once in a program.
      packages: 'external',
    }),
  ]);
}
