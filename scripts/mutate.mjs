// npm run mutate -- src/calendar [MORE FILES OR FOLDERS] [--sample N] [--seed S] [--tests PATH] [--steps N]
// [--skip N] [--again LOG]
// Changes one thing at a time in a copy of the project and sees whether the tests notice: those of the room and the
// published ones that reach the changed file, any other that reaches it over at most `--steps` imports, or those of
// `--tests`. One test process is kept throughout. `--again` tries only what survived in a log of an earlier run.
import { fork } from 'node:child_process';
import {
  cpSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, dirname, join, normalize, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import ts from 'typescript';
import { mutantsOf, shuffled } from './mutants.mjs';

const root = dirname(dirname(fileURLToPath(import.meta.url)));
const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    sample: { type: 'string', default: '25' },
    seed: { type: 'string', default: '1' },
    steps: { type: 'string', default: '0' },
    tests: { type: 'string', multiple: true },
    again: { type: 'string' },
    skip: { type: 'string', default: '0' },
  },
});
if (positionals.length === 0) {
  console.error(
    'Say what to change: npm run mutate -- src/calendar [--sample N] [--seed S] [--tests PATH] [--steps N]',
  );
  process.exit(2);
}

/** Files of a kind under a path that may be one, in order. */
const under = (path, kind) =>
  statSync(join(root, path)).isDirectory()
    ? readdirSync(join(root, path), { recursive: true })
        .filter((name) => name.endsWith(kind))
        .map((name) => join(path, name))
        .sort()
    : [path];

/** What a source file imports from the project, types aside. */
function importsOf(file) {
  const text = readFileSync(join(root, file), 'utf8').replaceAll(/^import type [^;]*;/gm, '');
  return ts
    .preProcessFile(text, true, true)
    .importedFiles.filter(({ fileName }) => fileName.startsWith('.'))
    .map(({ fileName }) => normalize(join(dirname(file), fileName)).replace(/\.js$/, '.ts'))
    .filter((name) => name.endsWith('.ts'));
}

const known = new Map();
const imports = (file) => {
  if (!known.has(file)) {
    let found = [];
    try {
      found = importsOf(file);
    } catch {
      // Generated or built files have no source to follow.
    }
    known.set(file, found);
  }
  return known.get(file);
};

/** Steps from a test to every file it reaches. A test that imports a room's index is one step from what it gives on. */
function distances(test) {
  const steps = new Map([[test, 0]]);
  const waiting = [test];
  for (const file of waiting)
    for (const next of imports(file)) {
      const far = steps.get(file) + (basename(file) === 'index.ts' ? 0 : 1);
      if (!steps.has(next) || far < steps.get(next)) {
        steps.set(next, far);
        waiting.push(next);
      }
    }
  return steps;
}

const tests = ['tests/unit', 'tests/published'].flatMap((folder) => under(folder, '.test.ts'));
const reach = new Map(tests.map((test) => [test, distances(test)]));
const room = (file) => file.split('/').slice(0, 2).at(-1);

/** Tests that can notice a change to a file. */
function testsOf(file) {
  if (values.tests) return values.tests.flatMap((path) => under(path, '.test.ts'));
  return tests.filter((test) => {
    const steps = reach.get(test).get(file);
    const own = test.startsWith(`tests/unit/${room(file)}/`) || test.startsWith('tests/published/');
    return steps <= (own ? Infinity : Number(values.steps));
  });
}

const files = positionals.flatMap((path) => under(path, '.ts'));
const whatOf = ({ file, line, from, to }) =>
  `${file}:${line}  ${from.replaceAll(/\s+/g, ' ')}  ->  ${to.replaceAll(/\s+/g, ' ')}`;

/** With `--again`: what survived in an earlier run of the same files, as it was printed. */
const survivors =
  values.again &&
  new Set(
    readFileSync(values.again, 'utf8')
      .split('\n')
      .flatMap((line) => (line.startsWith('SURVIVED  ') ? [line.slice(10)] : [])),
  );

const all = files
  .flatMap((file) => mutantsOf(root, file))
  .filter((one) => !survivors || survivors.has(whatOf(one)));
const sample = shuffled(all, Number(values.seed)).slice(
  Number(values.skip),
  Number(values.skip) + Number(values.sample),
);

const copy = mkdtempSync(join(tmpdir(), 'possession-fit-mutate-'));
const left = new Set(['node_modules', '.git', 'dist', 'dist-app', '.cache', '.vite']);
for (const name of readdirSync(root))
  if (!left.has(basename(name))) cpSync(join(root, name), join(copy, name), { recursive: true });
symlinkSync(join(root, 'node_modules'), join(copy, 'node_modules'));

let runner;
let asked = 0;
const answer = () =>
  new Promise((resolve, reject) => {
    const ended = (code) => reject(new Error(`The test process ended with ${code}.`));
    runner.once('exit', ended);
    runner.once('message', (said) => {
      runner?.off('exit', ended);
      resolve(said);
    });
  });

function stop() {
  runner?.removeAllListeners();
  runner?.kill('SIGKILL');
  runner = undefined;
}

const took = new Map();
const kills = new Map();

/** Tests that killed other changes of the file first, then the quick ones. */
const inOrder = (file, read) =>
  read.toSorted(
    (a, b) =>
      (kills.get(`${file} ${b}`) ?? 0) - (kills.get(`${file} ${a}`) ?? 0) ||
      (took.get(a) ?? 0) - (took.get(b) ?? 0),
  );

/** The first test that fails and why; `undefined` when all hold. */
async function noticedBy(file, read, longestMs) {
  if ((asked += 1) % 60 === 0) stop();
  if (runner === undefined) {
    runner = fork(join(copy, 'scripts/mutate-runner.mjs'), { cwd: copy, stdio: 'ignore' });
    await answer();
  }
  let timer;
  const late = new Promise((resolve) => {
    timer = setTimeout(resolve, longestMs, { failed: '', why: 'never ends' });
  });
  const said = answer();
  runner.send({ tests: inOrder(file, read).map((one) => join(copy, one)) });
  const {
    failed,
    why,
    took: times,
  } = await Promise.race([said.catch((error) => ({ failed: '', why: error.message })), late]);
  clearTimeout(timer);
  if (failed === undefined) {
    for (const [test, ms] of times) took.set(relative(copy, test), ms);
    return undefined;
  }
  if (failed === '') {
    stop();
    return { test: '', why };
  }
  const test = relative(copy, failed);
  kills.set(`${file} ${test}`, (kills.get(`${file} ${test}`) ?? 0) + 1);
  return { test, why };
}

try {
  const changed = new Set(sample.map((one) => one.file));
  const every = [...new Set([...changed].flatMap(testsOf))];
  const began = performance.now();
  const failed = await noticedBy('', every, 1_800_000);
  if (failed !== undefined)
    throw new Error(`${failed.test} fails before anything is changed: ${failed.why}`);
  /** Whoever takes far longer than unchanged code goes round for ever. */
  const patience = (read) => 10_000 + 5 * read.reduce((sum, test) => sum + took.get(test), 0);
  console.log(`${every.length} test files hold in ${Math.round(performance.now() - began)} ms`);
  let survived = 0;
  for (const mutant of sample) {
    const { file, to, start, end } = mutant;
    const path = join(copy, file);
    const text = readFileSync(path, 'utf8');
    writeFileSync(path, text.slice(0, start) + to + text.slice(end));
    const by = await noticedBy(file, testsOf(file), patience(testsOf(file)));
    writeFileSync(path, text);
    if (by === undefined) survived += 1;
    const what = whatOf(mutant);
    const how = by && (by.test === '' ? by.why : basename(by.test));
    console.log(by === undefined ? `SURVIVED  ${what}` : `killed    ${what}  (${how})`);
  }
  console.log(
    `${sample.length - survived} of ${sample.length} killed (of ${all.length} that can be made; seed ${values.seed}) in ${Math.round((performance.now() - began) / 1000)} s`,
  );
} finally {
  stop();
  rmSync(copy, { recursive: true, force: true });
}
