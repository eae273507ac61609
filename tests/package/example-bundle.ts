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

/** A file of the project, or code that stands at its root. */
type Entry = string | { readonly code: string };

/** Bundles a module as a consumer's bundler would, `sideEffects` of the package honoured. */
export async function bundled(entry: Entry, plugins: readonly Plugin[] = []): Promise<string> {
  const [text] = await bundledEach([entry], plugins);
  return text!;
}

/** Bundles each of several modules by itself; what they have in common is read once. */
export async function bundledEach(
  entries: readonly Entry[],
  plugins: readonly Plugin[] = [],
): Promise<string[]> {
  const codes: Plugin = {
    name: 'codes',
    setup(made) {
      made.onResolve({ filter: /^code:/ }, ({ path }) => ({ path, namespace: 'code' }));
      made.onLoad({ filter: /^code:/, namespace: 'code' }, ({ path }) => ({
        contents: (entries[Number(path.slice('code:'.length))] as { code: string }).code,
        resolveDir: root,
        loader: 'ts',
      }));
    },
  };
  const { outputFiles } = await build({
    entryPoints: entries.map((entry, at) => ({
      in: typeof entry === 'string' ? root + entry : `code:${at}`,
      out: String(at),
    })),
    outdir: root,
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
    plugins: [codes, packageFromSource, ...plugins],
  });
  const texts = new Map(outputFiles.map(({ path, text }) => [path, text]));
  return entries.map((_, at) => texts.get(`${root}${at}.js`)!);
}
