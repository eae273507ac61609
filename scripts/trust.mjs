// npm run trust: everything that shows what the README promises, as one table of figures. Exit 1 when one falls short.
// TRUST_QUICK=1 takes fewer cases.
import { spawn, spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { findBrowser } from './find-browser.mjs';
import { runtimePackages, unpinned } from './licences.mjs';

const quick = process.env.TRUST_QUICK === '1';
const faults = quick ? 500 : 10_000;
const edits = quick ? 12 : 200;
const lines = quick ? 60 : 900;
const slips = quick ? 100 : 5000;
const plans = quick ? 60 : 400;
const browser = await findBrowser();
const folder = mkdtempSync(join(tmpdir(), 'possession-fit-trust-'));
const rows = [];
let since = performance.now();
/** Adds a row; it took from the row before until now. `ok`: whether it holds, or why nobody knows. */
function row(name, figure, aim, ok) {
  const seconds = Math.round((performance.now() - since) / 1000);
  since = performance.now();
  const said = ok === true ? 'yes' : ok || 'NO';
  rows.push({ name, figure, aim, seconds, ok: said });
  console.log(`${name}: ${said}, ${figure}, in ${seconds} s`);
}

/** Runs something beside a Redis of its own, on this machine; a row that says so where there is none. */
async function withRedis(work) {
  const isRoot = process.getuid?.() === 0;
  if (spawnSync('redis-server', ['--version']).error && isRoot)
    spawnSync('apt-get', ['install', '-y', '-qq', '--no-install-recommends', 'redis-server']);
  if (spawnSync('redis-server', ['--version']).error)
    return row('two servers of a shared plan', 'no Redis here', 'joined by a Redis', 'not run');
  const port = 6391;
  const redis = spawn('redis-server', ['--port', port, '--bind', '127.0.0.1', '--save', '']);
  await new Promise((ready) => {
    redis.once('exit', ready);
    redis.stdout.on('data', (data) => /Ready to accept/.test(data) && ready());
  });
  work(`redis://127.0.0.1:${port}`);
  redis.kill();
}

/** Runs test files; one row with how many tests passed. `what` says what they were tried with. */
function tests(name, what, words, env = {}) {
  console.log(`— ${name}`);
  const report = join(folder, `${rows.length}.json`);
  const done = spawnSync(
    'node_modules/.bin/vitest',
    ['run', ...words, '--reporter=json', `--outputFile=${report}`],
    { encoding: 'utf8', env: { ...process.env, ...env } },
  );
  try {
    const { numPassedTests, numTotalTests, success, testResults } = JSON.parse(
      readFileSync(report, 'utf8'),
    );
    const ok = success && done.status === 0 && numPassedTests > 0;
    row(name, `${numPassedTests} of ${numTotalTests} checks hold`, what, ok);
    if (!ok)
      for (const file of testResults)
        for (const one of file.assertionResults)
          if (one.status === 'failed') console.error(one.fullName, one.failureMessages.join('\n'));
  } catch {
    console.error(done.stderr);
    row(name, 'did not run', what, false);
  }
}

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
);
tests(
  'plans beside every possible plan',
  `${plans} of each kind: whole, mended, frozen, apart, with lines; as good, and nothing falsely proven`,
  ['tests/unit/planner/'],
  Object.fromEntries(
    ['ORACLE', 'REPAIR', 'PIN', 'FROZEN', 'APART', 'LINE', 'UNPLACED'].map((kind) => [
      `${kind}_CASES`,
      String(plans),
    ]),
  ),
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
await withRedis((address) =>
  tests(
    'two servers of a shared plan',
    'joined by a Redis',
    ['tests/unit/share/two-servers.test.ts'],
    {
      SHARE_REDIS: address,
    },
  ),
);
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

const read = (name) => JSON.parse(readFileSync(name, 'utf8'));
const packages = runtimePackages(read('package-lock.json'));
const refused = packages.filter((one) => !one.ok);
row(
  'licences',
  `${packages.length} packages, ${refused.length} refused`,
  '0 refused',
  !refused.length,
);
const loose = unpinned(read('package.json'));
row('versions', `${loose.length} not pinned`, '0', loose.length === 0);

console.log('— the built page');
const page = join(folder, 'page');
const built = spawnSync(
  'node_modules/.bin/vite',
  ['build', '--config', 'vite.config.ts', '--logLevel', 'error', '--outDir', page],
  { stdio: ['ignore', 'ignore', 'inherit'] },
);
if (built.status === 0) {
  const names = readdirSync(page, { recursive: true }).map((name) => join(page, name));
  const files = names.filter((name) => statSync(name).isFile());
  const bytes = files.reduce((sum, name) => sum + gzipSync(readFileSync(name)).length, 0);
  row('the built page', `${Math.round(bytes / 1024)} KiB compressed`, 'told, no limit set', true);
} else row('the built page', 'not built', 'built', false);

rmSync(folder, { recursive: true, force: true });
const whole = rows.reduce((sum, one) => sum + one.seconds, 0);
console.table(Object.fromEntries(rows.map(({ name, ...rest }) => [name, rest])));
console.log(`${rows.length} rows in ${whole} s`);
if (rows.some((one) => one.ok === 'NO')) process.exitCode = 1;
