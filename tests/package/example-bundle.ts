import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { build, type Plugin } from 'esbuild';

const root = fileURLToPath(new URL('../../', import.meta.url));

type Target = string | { readonly default: string };
const { exports } = JSON.parse(readFileSync(`${root}package.json`, 'utf8')) as {
  readonly exports: Readonly<Record<string, Target>>;
};

/** The source of what an entry of the package leads to. */
function sourceOf(entry: string): string {
  const target = exports[entry];
  if (target === undefined) throw new Error(`the package has no entry ${entry}`);
  const path = typeof target === 'string' ? target : target.default;
  return root + path.replace('./dist/', '').replace(/\.js$/, '.ts');
}

/** The package by its name, from source: what its `exports` lead to once it is built. */
const packageFromSource: Plugin = {
  name: 'package-from-source',
  setup(made) {
    made.onResolve({ filter: /^possession-fit(\/|$)/ }, ({ path }) => {
      const source = sourceOf(path.replace('possession-fit', '.'));
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
