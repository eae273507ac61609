// npm test: installs, then checks types, layout and the direction of imports and runs every test, three steps at a time.
import { spawn } from 'node:child_process';
import { availableParallelism } from 'node:os';
import { createInterface } from 'node:readline';
import { findBrowser } from './find-browser.mjs';
import { install, root } from './install.mjs';

install();
process.env.CHROME_PATH = await findBrowser();

/** Workers of the longest steps: one core is left to the steps beside them. */
const workers = Math.max(1, availableParallelism() - 1);
/** Steps at a time: one more than two cores can carry, as tests of pages wait much. */
const lanes = 3;
/** What is still to be done: the longest first, and what writes into the project after what reads all of it. */
const steps = [
  ['lint', 'oxlint --type-aware --type-check'],
  ['page', `vitest run --config tests/offline/vitest.config.ts --maxWorkers ${workers + 1}`],
  ['unit', `vitest run --project together --maxWorkers ${workers}`],
  ['layout', 'oxfmt --check .'],
  ['imports', 'depcruise --config .dependency-cruiser.cjs src components app'],
  ['unreached', 'knip --no-progress --no-config-hints'],
  ['browser', 'wtr --config web-test-runner.config.mjs'],
  ['package', 'vitest run --project alone --maxWorkers 1'],
  ['zones', 'vitest run --config tests/zones/vitest.config.ts --maxWorkers 1'],
];

/** Lines of a step that tell nothing of a failure: empty ones, tests that passed, how far the browser is. */
const tellsNothing = /^\s*$|✓|Running tests\.\.\.|test files \|/;
/** Lines of a failed step that are written once more at the end. */
const linesAgain = 200;

/** Runs a step; each line that it writes is shown at once, headed by its name. */
async function ended([step, command]) {
  const began = performance.now();
  const [tool, ...words] = command.split(' ');
  const child = spawn(`node_modules/.bin/${tool}`, words, {
    cwd: root,
    shell: process.platform === 'win32',
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  const lines = [];
  for (const input of [child.stdout, child.stderr])
    createInterface({ input }).on('line', (line) => {
      console.log(`${step} | ${line}`);
      if (!tellsNothing.test(line)) lines.push(line);
    });
  const code = await new Promise((resolve) => {
    child.on('error', (error) => resolve(error.message));
    child.on('close', resolve);
  });
  const seconds = Math.round((performance.now() - began) / 1000);
  const passed = code === 0;
  console.log(`${step} — ${passed ? 'passed' : `FAILED (${code})`} in ${seconds} s`);
  return { step, seconds, passed, lines };
}

const done = [];
/** Takes step after step; none is begun once one has failed. */
async function worker() {
  while (steps.length > 0 && done.every((step) => step.passed))
    done.push(await ended(steps.shift()));
}
await Promise.all(Array.from({ length: lanes }, worker));

// Once more at the end: what failed lies thousands of lines back, between those of the steps beside it.
for (const { step, lines } of done.filter(({ passed }) => !passed)) {
  console.log(`\nWhat ${step} wrote, without the tests that passed:`);
  for (const line of lines.slice(-linesAgain)) console.log(`${step} | ${line}`);
}
console.table(
  Object.fromEntries(done.map(({ step, seconds, passed }) => [step, { seconds, passed }])),
);
if (done.every((step) => step.passed)) console.log('All passed.');
else {
  process.exitCode = 1;
  if (steps.length > 0) console.log(`Not run: ${steps.map(([step]) => step).join(', ')}`);
}
