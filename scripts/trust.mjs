// npm run trust: everything that shows what the README promises, as one table of figures. Exit 1 when one falls short.
// TRUST_QUICK=1 takes fewer cases.
import { spawn, spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync } from 'node:fs';
import { availableParallelism, tmpdir } from 'node:os';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { findBrowser } from './find-browser.mjs';
import { runtimePackages, unpinned } from './licences.mjs';

const quick = process.env.TRUST_QUICK === '1';
const faults = quick ? 500 : 10_000;
const edits = quick ? 12 : 200;
const lines = quick ? 60 : 900;
const slips = quick ? 100 : 5000;
const plans = quick ? 60 : 10_000;
const changes = quick ? 60 : 400;
const browser = await findBrowser();
const folder = mkdtempSync(join(tmpdir(), 'possession-fit-trust-'));
const rows = [];

/** Each job keeps a core busy; the others wait for one. */
const waiting = [];
let free = availableParallelism();
async function onCore(job) {
  if (free > 0) free -= 1;
  else await new Promise((go) => waiting.push(go));
  const since = performance.now();
  try {
    return { ...(await job()), seconds: (performance.now() - since) / 1000 };
  } finally {
    const next = waiting.shift();
    if (next) next();
    else free += 1;
  }
}

/** A row of the table, in the order in which rows are asked for. `jobs` are over in any order; each says whether all of it holds. */
function row(name, aim, jobs, figureOf) {
  const place = rows.length;
  rows.push(
    Promise.all(jobs.map(onCore)).then((done) => {
      const verdicts = done.map(({ ok }) => ok);
      const said = verdicts.find((ok) => ok !== true) ?? true;
      const figure = figureOf(done);
      const seconds = Math.round(done.reduce((sum, one) => sum + one.seconds, 0));
      const ok = said === true ? 'yes' : said || 'NO';
      console.log(`${place + 1}. ${name}: ${ok}, ${figure}, in ${seconds} s`);
      return { name, figure, aim, seconds, ok };
    }),
  );
  return rows[place];
}

/** Runs a program to its end; what it writes to its errors. */
async function run(program, words, env = {}) {
  const child = spawn(program, words, {
    stdio: ['ignore', 'ignore', 'pipe'],
    env: { ...process.env, ...env },
  });
  let errors = '';
  child.stderr.on('data', (text) => (errors += text));
  const status = await new Promise((ended) => {
    child.on('error', (error) => ended(error.message));
    child.on('close', ended);
  });
  return { status, errors };
}

/** Begins a Redis of its own on this machine; nothing where there is none. */
async function redisServer() {
  const isMissing = () => spawnSync('redis-server', ['--version']).error;
  if (isMissing() && process.getuid?.() === 0)
    spawnSync('apt-get', ['install', '-y', '-qq', '--no-install-recommends', 'redis-server']);
  if (isMissing()) return undefined;
  const port = 6391;
  const redis = spawn('redis-server', ['--port', port, '--bind', '127.0.0.1', '--save', '']);
  await new Promise((ready) => {
    redis.once('exit', ready);
    redis.stdout.on('data', (data) => /Ready to accept/.test(data) && ready());
  });
  return { address: `redis://127.0.0.1:${port}`, end: () => redis.kill() };
}

let reports = 0;
/** Runs tests in one worker; how many passed. */
async function vitest(words, env) {
  const report = join(folder, `${(reports += 1)}.json`);
  const { status, errors } = await run(
    'node_modules/.bin/vitest',
    ['run', ...words, '--maxWorkers=1', '--reporter=json', `--outputFile=${report}`],
    env,
  );
  try {
    const { numPassedTests, numTotalTests, success, testResults } = read(report);
    const ok = success && status === 0 && numPassedTests > 0;
    if (!ok)
      for (const file of testResults)
        for (const one of file.assertionResults)
          if (one.status === 'failed') console.error(one.fullName, one.failureMessages.join('\n'));
    return { ok, passed: numPassedTests, all: numTotalTests };
  } catch {
    console.error(errors);
    return { ok: false, passed: 0, all: 0 };
  }
}

/** Parts of what would keep one core busy for long. */
const parts = Array.from({ length: 2 * availableParallelism() }, (_, at) => at + 1);
const split = {
  /** By the seeds of the cases. */
  seeds: (env) => parts.map((at) => [[], { ...env, CASES_PART: `${at}/${parts.length}` }]),
  /** By the files of the tests. */
  files: (env) => parts.map((at) => [[`--shard=${at}/${parts.length}`], env]),
  none: (env) => [[[], env]],
};

/** A row of test files with how many tests passed. `aim` says what they were tried with, `by` how they are split into jobs. */
function tests(name, aim, words, env = {}, by = split.none) {
  const jobs = by(env).map(
    ([more, own]) =>
      () =>
        vitest([...words, ...more], own),
  );
  const sum = (done, key) => done.reduce((all, one) => all + one[key], 0);
  return row(
    name,
    aim,
    jobs,
    (done) => `${sum(done, 'passed')} of ${sum(done, 'all')} checks hold`,
  );
}

const read = (name) => JSON.parse(readFileSync(name, 'utf8'));
const redis = await redisServer();

tests(
  'regular expressions',
  'none can run away',
  ['tests/unit/trust/regular-expressions.test.ts'],
  { JUDGE_ALL: '1' },
);
tests(
  'command line',
  `${lines} random command lines: no crash, no hang`,
  ['tests/unit/trust/verbs.test.ts'],
  { TRUST_CASES: String(lines) },
);
tests(
  'files of the command line',
  `${lines} times any bytes, names and logs: stated errors, none written over`,
  ['tests/unit/trust/side-files.test.ts'],
  { TRUST_CASES: String(lines) },
);
tests(
  'slips of the hand',
  `${slips} in every verb and the import: no crash, 10 s of processor time, nothing unlikely unsaid`,
  ['tests/unit/trust/slips.test.ts'],
  { SLIP_CASES: String(slips) },
  split.seeds,
);
tests(
  'plans beside every possible plan',
  `${plans} whole, and as many with line state: as good, and all proven`,
  ['tests/unit/planner/oracle.test.ts'],
  { ORACLE_CASES: String(plans) },
  split.seeds,
);
tests(
  'changed plans beside every possible plan',
  `${changes} of each kind: mended, frozen, apart, with lines; as good, and nothing falsely proven`,
  ['repair', 'pins', 'frozen', 'apart', 'line-state/', 'unplaced-causes'].map(
    (name) => `tests/unit/planner/${name}`,
  ),
  Object.fromEntries(
    ['REPAIR', 'PIN', 'FROZEN', 'APART', 'LINE', 'UNPLACED'].map((kind) => [
      `${kind}_CASES`,
      String(changes),
    ]),
  ),
  split.files,
);
tests(
  'keeping a plan',
  `${faults} faults: no committed edit lost`,
  ['tests/unit/store/faults.test.ts'],
  { STORE_FAULTS: String(faults) },
);
tests(
  'one edit worked out again',
  `${edits} random plans: the same as worked out whole`,
  ['tests/unit/engine/incremental.test.ts'],
  { INCREMENTAL_CASES: String(edits) },
);
const shared = redis
  ? tests(
      'two servers of a shared plan',
      'joined by a Redis',
      ['tests/unit/share/two-servers.test.ts'],
      { SHARE_REDIS: redis.address },
    )
  : row(
      'two servers of a shared plan',
      'joined by a Redis',
      [() => ({ ok: 'not run' })],
      () => 'no Redis here',
    );
void shared.then(() => redis?.end());
tests('inline, port and worker', 'one contract', ['tests/unit/engine/engines.test.ts']);
const inPage = (name, what, file) =>
  tests(
    name,
    what,
    ['--config', 'tests/offline/vitest.config.ts', `tests/offline/${file}.test.ts`],
    {
      CHROME_PATH: browser,
    },
  );
inPage('hostile tables in the page', 'text only, strict policy, Trusted Types', 'hostile');
inPage('hostile files in the page', 'told, the page goes on, nothing lost', 'hostile-files');
inPage(
  'there and back in the page',
  'naughty strings and csv-spectrum: not a character changed',
  'round-trip',
);

const packages = runtimePackages(read('package-lock.json'));
const refused = packages.filter((one) => !one.ok);
row(
  'licences',
  '0 refused',
  [() => ({ ok: !refused.length })],
  () => `${packages.length} packages, ${refused.length} refused`,
);
const loose = unpinned(read('package.json'));
row('versions', '0', [() => ({ ok: loose.length === 0 })], () => `${loose.length} not pinned`);

/** KiB of the built page, compressed. */
async function builtPage() {
  const page = join(folder, 'page');
  const { status, errors } = await run('node_modules/.bin/vite', [
    ...['build', '--config', 'vite.config.ts', '--logLevel', 'error', '--outDir', page],
  ]);
  if (status !== 0) {
    console.error(errors);
    return { ok: false };
  }
  const names = readdirSync(page, { recursive: true }).map((name) => join(page, name));
  const files = names.filter((name) => statSync(name).isFile());
  const bytes = files.reduce((sum, name) => sum + gzipSync(readFileSync(name)).length, 0);
  return { ok: true, kib: Math.round(bytes / 1024) };
}
row('the built page', 'told, no limit set', [builtPage], ([{ kib }]) =>
  kib === undefined ? 'not built' : `${kib} KiB compressed`,
);

const began = performance.now();
const table = await Promise.all(rows);
rmSync(folder, { recursive: true, force: true });
const minutes = ((performance.now() - began) / 60_000).toFixed(1);
console.table(Object.fromEntries(table.map(({ name, ...rest }) => [name, rest])));
console.log(`${table.length} rows in ${minutes} minutes`);
if (table.some((one) => one.ok === 'NO')) process.exitCode = 1;
