// Child process of scripts/mutate.mjs, kept over many changes: it runs in the copy, is sent `{ tests }`, and answers
// `{ failed, why }`, the first test file that fails. Each file is bundled with the sources as they stand and loaded
// anew, so that nothing is left of the run before; packages are loaded once. Only `describe`, `it` and `expect` are
// given, which is all that the tests of pure rooms use; `expect` is vitest's own.
import { readFile } from 'node:fs/promises';
import { rmSync } from 'node:fs';
import { pathToFileURL } from 'node:url';
import {
  ASYMMETRIC_MATCHERS_OBJECT,
  chai,
  JestAsymmetricMatchers,
  JestChaiExpect,
  JestExtend,
  setState,
} from '@vitest/expect';
import { build } from 'esbuild';

for (const plugin of [JestExtend, JestChaiExpect, JestAsymmetricMatchers]) chai.use(plugin);
const expect = Object.assign((value, message) => chai.expect(value, message), chai.expect);
Object.assign(expect, globalThis[ASYMMETRIC_MATCHERS_OBJECT]);
setState({ assertionCalls: 0 }, expect);

let waiting = [];
const it = (name, ...rest) => waiting.push([name, rest.find((one) => typeof one === 'function')]);
const describe = (_name, body) => body();
const each = (one) => (table) => (name, body, options) => {
  for (const row of table)
    one(name, () => (Array.isArray(row) ? body(...row) : body(row)), options);
};
it.each = each(it);
describe.each = each((name, body) => body());
globalThis.testWords = { describe, expect, it };

const words = {
  name: 'test-words',
  setup(context) {
    context.onResolve({ filter: /^vitest$/ }, () => ({ path: 'words', namespace: 'words' }));
    context.onLoad({ filter: /.*/, namespace: 'words' }, () => ({
      contents: 'export const { describe, expect, it } = globalThis.testWords;',
    }));
    // Where a file looks for samples depends on where it was, not on where its bundle lies.
    context.onLoad({ filter: /\.ts$/ }, async ({ path }) => ({
      loader: 'ts',
      contents: (await readFile(path, 'utf8')).replaceAll(
        'import.meta.url',
        JSON.stringify(pathToFileURL(path).href),
      ),
    }));
  },
};

let loaded = 0;
async function failureOf(test) {
  const outfile = test.replace(/\.ts$/, `.${(loaded += 1)}.bundle.mjs`);
  await build({
    entryPoints: [test],
    outfile,
    bundle: true,
    packages: 'external',
    format: 'esm',
    target: 'es2022',
    logLevel: 'silent',
    plugins: [words],
  });
  waiting = [];
  try {
    await import(pathToFileURL(outfile).href);
    if (waiting.length === 0) return 'it holds no test';
    for (const [name, body] of waiting) {
      try {
        await body();
      } catch (error) {
        return `${name}: ${String(error).slice(0, 200)}`;
      }
    }
    return undefined;
  } catch (error) {
    return String(error);
  } finally {
    rmSync(outfile);
  }
}

const took = new Map();
process.on('message', ({ tests }) => void run(tests));
async function run(tests) {
  for (const test of tests) {
    const began = performance.now();
    const why = await failureOf(test);
    took.set(test, performance.now() - began);
    if (why !== undefined) {
      process.send({ failed: test, why, took: [...took] });
      return;
    }
  }
  process.send({ took: [...took] });
}
process.on('unhandledRejection', () => undefined);
process.on('disconnect', () => process.exit());
process.send({ ready: true });
