// Child process of scripts/mutate.mjs: one test runner kept for a whole mutation run. It runs in the copy, is sent
// `{ changed, tests }` and answers `{ failed }`, the first test that fails. Quick ones come first.
import { createVitest } from 'vitest/node';

const vitest = await createVitest('test', {
  watch: false,
  pool: 'threads',
  maxWorkers: 1,
  fileParallelism: false,
  bail: 1,
  reporters: [{ onInit() {} }],
  cache: false,
  silent: true,
  testTimeout: 120_000,
});

let before;
const took = new Map();

/** The first test file that fails, or `undefined`. */
async function firstFailure(changed, tests) {
  // The file changed before has been put back.
  if (before !== undefined) vitest.invalidateFile(before);
  vitest.invalidateFile(changed);
  before = changed;
  for (const test of tests.sort((a, b) => (took.get(a) ?? 0) - (took.get(b) ?? 0))) {
    const began = performance.now();
    // What an earlier run failed would stop this one before it begins.
    vitest.state.filesMap.clear();
    vitest.state.idMap.clear();
    const { testModules, unhandledErrors } = await vitest.runTestSpecifications([
      vitest.getRootProject().createSpecification(test),
    ]);
    if (unhandledErrors.length > 0 || testModules.some((one) => one.state() === 'failed'))
      return test;
    took.set(test, performance.now() - began);
  }
  return undefined;
}

process.on('message', async ({ changed, tests }) => {
  try {
    process.send({ failed: await firstFailure(changed, tests) });
  } catch (error) {
    process.send({ failed: tests[0], why: String(error) });
  }
});
process.on('disconnect', () => process.exit());
process.send({ ready: true });
