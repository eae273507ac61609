import { chromeLauncher } from '@web/test-runner-chrome';
import { browserTests } from './scripts/browser-tests.mjs';

const flags = [
  '--headless',
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--disable-renderer-backgrounding',
  '--disable-backgrounding-occluded-windows',
];

export default {
  files: 'tests/browser/**/*.test.ts',
  // One page at a time: a browser draws no frames for a page behind another, and tests that wait for one would not end.
  concurrency: 1,
  plugins: [browserTests()],
  browsers: [
    chromeLauncher({
      launchOptions: { executablePath: process.env.CHROME_PATH, args: flags, protocolTimeout: 0 },
    }),
  ],
  // Against hanging alone: how fast the machine is must not decide.
  testFramework: { config: { timeout: 3_600_000 } },
  browserStartTimeout: 3_600_000,
  testsStartTimeout: 3_600_000,
  testsFinishTimeout: 3_600_000,
};
