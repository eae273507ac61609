// npm run build: what is published. Modules with their types, the command line with the JSON schemas of its
// answers, bundles for a page without a bundler, and data for editors.
import { execFileSync } from 'node:child_process';
import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'vite';
import { bundleCliInParts } from './bundle-cli.mjs';
import { editorData, webTypes } from './framework-types.mjs';
import { root, run } from './install.mjs';
import { makeManifest } from './manifest.mjs';
import { papaparseParser } from './papaparse-parser.mjs';
import { smallModules } from './small-modules.mjs';
import { trimTemplates } from './trim-templates.mjs';
import { workerInBuild } from './worker-in-build.mjs';

const out = join(root, 'dist');

/** Puts another module in the place of one, by its path. */
const inPlaceOf = (path, other) => ({
  name: 'in-place-of',
  enforce: 'pre',
  async resolveId(source, importer) {
    if (!source.endsWith('/start-worker.js') || !importer) return undefined;
    const found = await this.resolve(source, importer, { skipSelf: true });
    return found?.id === join(root, path) ? join(root, other) : undefined;
  },
});

/** What a plain page may load, by the name of its file: everything, or what shows windows, work and what fits. */
export const bundles = {
  'possession-fit': 'components/browser.ts',
  'possession-core': 'components/browser-core.ts',
  'possession-ribbon': 'components/browser-ribbon.ts',
};

/** What a page of a bundle reads in any case, so that it comes with the first file and not in one of its own. */
const withFirst = { 'possession-ribbon': [/\/src\/engine\/incremental\/results-receiver\.ts$/] };

/**
 * Modules for a page without a bundler, each with what it loads later and the worker of its engine beside it.
 * @returns The files of each bundle, as Vite tells of them.
 */
export async function browserBundles(outDir, write = true) {
  const { NODE_ENV } = process.env;
  // A test runner sets NODE_ENV to "test", which would build the development variants of libraries.
  process.env.NODE_ENV = 'production';
  const made = {};
  try {
    for (const [name, entry] of Object.entries(bundles))
      made[name] = await build(bundleOptions(name, entry, outDir, write));
  } finally {
    if (NODE_ENV === undefined) delete process.env.NODE_ENV;
    else process.env.NODE_ENV = NODE_ENV;
  }
  return made;
}

function bundleOptions(name, entry, outDir, write) {
  return {
    root,
    configFile: false,
    base: './',
    logLevel: 'error',
    plugins: [
      trimTemplates(),
      papaparseParser(),
      workerInBuild(),
      inPlaceOf('src/engine/start-worker.ts', 'scripts/browser-bundle/start-worker.js'),
    ],
    build: {
      write,
      outDir,
      emptyOutDir: false,
      target: 'es2022',
      modulePreload: false,
      assetsInlineLimit: 0,
      reportCompressedSize: false,
      // What their licences ask for: their texts go where the code goes.
      license: { fileName: `${name}.licences.md` },
      rolldownOptions: {
        preserveEntrySignatures: 'strict',
        input: { [name]: join(root, entry) },
        output: {
          format: 'es',
          entryFileNames: ({ name: entry }) => (entry === name ? '[name].js' : '[name]-[hash].js'),
          chunkFileNames: 'part-[hash].js',
          codeSplitting: { groups: [smallModules(withFirst[name])] },
        },
      },
    },
  };
}

/** The JSON schema of what each verb prints, as the command line itself tells it. */
function answerSchemas(cli, folder) {
  mkdirSync(folder);
  const told = execFileSync('node', [cli, '--schema'], { encoding: 'utf8' });
  for (const [verb, schema] of Object.entries(JSON.parse(told)))
    writeFileSync(join(folder, `${verb}.json`), json(schema));
}

const json = (value) => `${JSON.stringify(value, null, 2)}\n`;

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  rmSync(out, { recursive: true, force: true });
  run('node_modules/.bin/tsc', ['-p', 'tsconfig.build.json']);
  answerSchemas(await bundleCliInParts(root, out), join(out, 'schemas'));
  await browserBundles(join(out, 'browser'));
  const manifest = makeManifest();
  mkdirSync(join(out, 'editors'));
  const about = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));
  writeFileSync(join(out, 'editors/html-custom-data.json'), json(editorData(manifest)));
  writeFileSync(join(out, 'editors/web-types.json'), json(webTypes(manifest, about)));
}
