// npm test: installs, checks types, style and the direction of imports, then runs every test.
import { findBrowser } from './find-browser.mjs';
import { install, run } from './install.mjs';

install();
const bin = (tool) => `node_modules/.bin/${tool}`;
const step = (title, command, args, extra) => {
  console.log(`\n— ${title}`);
  run(command, args, extra);
};

step('types', bin('tsc'), ['--noEmit']);
step('style', bin('eslint'), ['.', '--max-warnings=0']);
step('layout of the text', bin('prettier'), ['--check', '--log-level', 'warn', '.']);
step('direction of imports', bin('depcruise'), [
  '--config',
  '.dependency-cruiser.cjs',
  'src',
  'components',
  'app',
]);
step('nothing that the product does not reach', bin('knip'), [
  '--no-progress',
  '--no-config-hints',
]);
step('unit and published checks', bin('vitest'), ['run']);
// Time arithmetic must not depend on the zone of the machine it runs on.
for (const TZ of ['Europe/London', 'America/Los_Angeles', 'Pacific/Auckland']) {
  step(
    `calendar and rules with TZ=${TZ}`,
    bin('vitest'),
    ['run', 'tests/unit/calendar', 'tests/unit/rules'],
    { env: { TZ } },
  );
}
const CHROME_PATH = await findBrowser();
step(`browser tests in ${CHROME_PATH}`, bin('wtr'), ['--config', 'web-test-runner.config.mjs'], {
  env: { CHROME_PATH },
});
step(
  'the built page without a network',
  bin('vitest'),
  ['run', '--config', 'tests/offline/vitest.config.ts'],
  { env: { CHROME_PATH } },
);
console.log('\nAll passed.');
