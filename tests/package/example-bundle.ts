import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { build, type Plugin } from 'esbuild';

const root = fileURLToPath(new URL('../../', import.meta.url));

/** The package by its name, from source: what its `exports` lead to once it is built. */
const packageFromSource: Plugin = {
  name: 'package-from-source',
  setup(made) {
    made.onResolve({ filter: /^possession-fit\// }, ({ path }) => {
      const source = root + path.replace(/^possession-fit\//, '').replace(/\.js$/, '.ts');
      return made.resolve(source, { resolveDir: root, kind: 'import-statement' });
    });
    made.onResolve({ filter: /^\.\/plan\.js$/ }, ({ resolveDir }) => {
      const path = `${resolveDir}/plan.ts`;
      return existsSync(path) ? { path } : undefined;
    });
  },
};

/** Bundles a module as a consumer's bundler would, `sideEffects` of the package honoured. */
export async function bundled(
  entry: string | { readonly code: string },
  plugins: readonly Plugin[] = [],
): Promise<string> {
  const made = await build({
    ...(typeof entry === 'string'
      ? { entryPoints: [root + entry] }
      : { stdin: { contents: entry.code, resolveDir: root, loader: 'ts' } }),
    bundle: true,
    minify: true,
    write: false,
    format: 'esm',
    target: 'es2022',
    jsx: 'automatic',
    logLevel: 'error',
    define: {
      'process.env.NODE_ENV': '"production"',
      ngDevMode: 'false',
      ngJitMode: 'false',
      __VUE_OPTIONS_API__: 'false',
      __VUE_PROD_DEVTOOLS__: 'false',
      __VUE_PROD_HYDRATION_MISMATCH_DETAILS__: 'false',
    },
    plugins: [packageFromSource, ...plugins],
  });
  return made.outputFiles[0]!.text;
}
