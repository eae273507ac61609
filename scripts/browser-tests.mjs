// The browser tests bundled once for all their pages: each page would else ask for hundreds of modules one by one.
import { readFile } from 'node:fs/promises';
import { relative } from 'node:path';
import { build } from 'esbuild';
import { root } from './install.mjs';

/** A module keeps the address of its source, so that what stands beside it (a worker, a file of samples) is found there. */
const sourceAddresses = {
  name: 'source-addresses',
  setup(made) {
    made.onLoad({ filter: /\.ts$/ }, async ({ path }) => {
      const code = await readFile(path, 'utf8');
      if (path.includes('node_modules') || !code.includes('import.meta.url')) return undefined;
      const address = JSON.stringify(`/${relative(root, path)}`);
      const contents = code.replaceAll(
        'import.meta.url',
        `new URL(${address}, location.origin).href`,
      );
      return { contents, loader: 'ts' };
    });
  },
};

/** Bundles the entries, which share their parts. Returns the text of each file by its address. */
async function bundled(entryPoints) {
  const { outputFiles } = await build({
    entryPoints,
    bundle: true,
    splitting: true,
    write: false,
    format: 'esm',
    target: 'es2022',
    conditions: ['browser', 'production'],
    define: { 'process.env.NODE_ENV': '"production"' },
    // What the runner serves by itself, the channel of its commands among it.
    external: ['/__*'],
    // The package's list of modules with side effects names none of the tests'.
    ignoreAnnotations: true,
    absWorkingDir: root,
    outdir: root,
    outbase: root,
    chunkNames: 'bundled-for-tests/[hash]',
    sourcemap: 'linked',
    logLevel: 'error',
    plugins: [sourceAddresses],
  });
  return new Map(outputFiles.map(({ path, text }) => [`/${relative(root, path)}`, text]));
}

/** For the test runner: serves each test file, what one loads as a tab of its own, and the engine's worker, from one bundle. */
export function browserTests() {
  let files;
  return {
    name: 'browser-tests',
    async serverStart() {
      files = await bundled([
        'tests/browser/**/*.test.ts',
        'tests/browser/support/store-tab.ts',
        'src/engine/worker.ts',
      ]);
    },
    serve(context) {
      const body = files.get(context.path) ?? files.get(context.path.replace(/\.ts$/, '.js'));
      return body === undefined ? undefined : { body, type: 'js' };
    },
  };
}
