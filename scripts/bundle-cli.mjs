// The command line, bundled so that it needs no installed library; and apart from it the server of `share`, which needs
// libraries of its own and is loaded by that verb alone.
import { chmodSync, readFileSync, writeFileSync } from 'node:fs';
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

const serverBundle = (root, outfile) =>
  build({
    ...common,
    entryPoints: [join(root, 'src/share/index.ts')],
    outfile,
    // The libraries of sharing must be there once in a program.
    packages: 'external',
  });

/** @param files Where the command line, as one file, and the server are written, in one folder. */
export async function bundleCli(root, files) {
  await Promise.all([
    build({ ...nodeBundle, entryPoints: [join(root, 'src/cli.ts')], outfile: files.cli }),
    serverBundle(root, files.share),
  ]);
}

/**
 * `cli.js` in a folder, and in `cli/` beside it what it loads when a verb needs it: compiling what is not asked took longer than
 * many an answer.
 */
export async function bundleCliInParts(root, folder) {
  const cli = join(folder, 'cli.js');
  await Promise.all([
    build({
      ...nodeBundle,
      splitting: true,
      entryPoints: [join(root, 'src/cli.ts')],
      outdir: folder,
      chunkNames: 'cli/[name]-[hash]',
    }),
    serverBundle(root, join(folder, 'cli/share.js')),
  ]);
  writeFileSync(cli, `#!/usr/bin/env node\n${readFileSync(cli, 'utf8')}`);
  chmodSync(cli, 0o755);
  return cli;
}
