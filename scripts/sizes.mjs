// How much a page has to load before it can work: the engine's worker and the first paint of the desk, gzipped, as built
// for `npm start`, and the bundles for a page of somebody else's. What is imported statically counts; what is loaded when it
// is first needed is told apart. Of the ribbon with its plan, all counts that a browser asks for until hours are shown.
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';
import { build, parseAst } from 'vite';
import { browserBundles } from './build-package.mjs';
import { filesUntilHours } from './first-hours.mjs';

const root = dirname(dirname(fileURLToPath(import.meta.url)));

/**
 * What is measured: the size we aim at and the size that may not be passed, in kB (1000 bytes) gzipped. A limit above
 * its aim says that the aim is not reached yet; lower it whenever a change allows.
 */
export const budgets = [
  { name: 'engine', entry: /^assets\/engine-/, aim: 46, limit: 46 },
  { name: 'first paint', entry: /^assets\/index-.*\.js$/, aim: 107, limit: 107 },
  // What the page has by then is not counted again: the view that needs a chart is there before it.
  {
    name: 'charts, loaded with the first',
    entry: /^assets\/draw-/,
    alone: true,
    aim: 56,
    limit: 56,
  },
  {
    name: 'ribbon, document and engine, until hours are shown',
    bundle: 'possession-ribbon',
    untilHours: true,
    aim: 75,
    limit: 75,
  },
  { name: 'bundle of windows, work and fit', bundle: 'possession-core', aim: 72, limit: 72 },
  { name: 'bundle of everything', bundle: 'possession-fit', aim: 259, limit: 259 },
  // Every part, German and the engine of pages without a worker among them; no page loads them all.
  {
    name: 'bundle of everything, with all that is loaded later but charts',
    bundle: 'possession-fit',
    whole: true,
    aim: 740,
    limit: 746,
  },
];

/**
 * Builds the page in memory and measures each budget.
 * @returns per budget: its name, aim and limit; `bytes`, gzipped one by one (level 9), of the entry and all it imports
 * statically; `files`, those files; `parts`, what each library or room adds before compression.
 */
export async function measure() {
  // A test runner sets NODE_ENV to "test", which would build the development variants of libraries.
  const { NODE_ENV } = process.env;
  process.env.NODE_ENV = 'production';
  const built = await build({
    configFile: join(root, 'vite.config.ts'),
    logLevel: 'error',
    build: { write: false },
  }).finally(() => {
    if (NODE_ENV === undefined) delete process.env.NODE_ENV;
    else process.env.NODE_ENV = NODE_ENV;
  });
  const byName = ({ output }) => new Map(output.map((one) => [one.fileName, one]));
  const bundles = await browserBundles(join(root, 'dist/browser'), false);
  const measured = [];
  for (const { entry, alone, bundle, untilHours, whole, ...budget } of budgets) {
    const files = byName(bundle ? bundles[bundle] : built);
    const found = [...files.keys()].filter((name) =>
      bundle ? name === `${bundle}.js` : entry.test(name),
    );
    if (found.length !== 1) throw new Error(`not one entry for ${budget.name}: ${found}`);
    let names = found;
    if (untilHours) names = await filesUntilHours(bundle, files);
    else if (whole)
      names = [...files.keys()].filter(
        (name) => name.endsWith('.js') && !holdsCharts(files.get(name)),
      );
    else if (!alone) names = closure(found[0], files);
    const bytes = names.reduce((sum, name) => sum + gzipped(textOf(files.get(name))), 0);
    measured.push({
      ...budget,
      bytes,
      files: names,
      parts: partsOf(names.map((name) => files.get(name))),
    });
  }
  return measured;
}

const holdsCharts = (file) =>
  Object.keys(file.modules ?? {}).some((module) => module.includes('/node_modules/chart.js/'));

const textOf = (file) => (file.type === 'chunk' ? file.code : String(file.source));
const gzipped = (text) => gzipSync(text, { level: 9 }).length;

/** A file and all that it imports statically, near or far. */
function closure(entry, files) {
  const seen = new Set();
  const follow = (name) => {
    if (seen.has(name)) return;
    seen.add(name);
    for (const statement of parseAst(textOf(files.get(name))).body) {
      const from = statement.source?.value;
      if (from?.startsWith('.')) follow(join(dirname(name), from).replaceAll('\\', '/'));
    }
  };
  follow(entry);
  return [...seen];
}

/** What each library, or room of ours, adds to some files, largest first. */
function partsOf(files) {
  const parts = new Map();
  for (const file of files)
    for (const [source, { renderedLength }] of Object.entries(file.modules ?? {})) {
      const library = /node_modules\/((?:@[^/]+\/)?[^/]+)/.exec(source)?.[1];
      const part =
        library ??
        source
          .slice(root.length + 1)
          .split('/')
          .slice(0, 2)
          .join('/');
      parts.set(part, (parts.get(part) ?? 0) + renderedLength);
    }
  return [...parts].sort((one, other) => other[1] - one[1]);
}

const kB = (bytes) => `${(bytes / 1000).toFixed(1)} kB`;

if (process.argv[1] === fileURLToPath(import.meta.url))
  for (const { name, aim, limit, bytes, files, parts } of await measure()) {
    console.log(
      `${name}: ${kB(bytes)} gzipped in ${files.length} files; aim ${aim}, limit ${limit}`,
    );
    for (const [part, size] of parts.slice(0, 20))
      console.log(`${kB(size).padStart(12)} not minified: ${part}`);
    if (bytes > limit * 1000) process.exitCode = 1;
  }
