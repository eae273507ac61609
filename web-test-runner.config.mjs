import { existsSync } from 'node:fs';
import { esbuildPlugin } from '@web/dev-server-esbuild';
import { chromeLauncher } from '@web/test-runner-chrome';

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

/** `new URL('./x.js', import.meta.url)` names a built file; here the source is `x.ts`. */
function sourceOfWorkers(context, next) {
  if (context.path.endsWith('.js') && !context.path.includes('node_modules')) {
    const source = context.path.replace(/\.js$/, '.ts');
    if (!existsSync(`.${context.path}`) && existsSync(`.${source}`))
      context.url = context.url.replace(context.path, source);
  }
  return next();
}

/** papaparse ships in the older form of a script; unbundled it has to be given the shape of a module. */
const papaparseAsModule = {
  name: 'papaparse-as-module',
  transform(context) {
    if (!context.path.endsWith('/papaparse/papaparse.js')) return undefined;
    return `const module = { exports: {} };\nconst exports = module.exports;\n${context.body}\nexport default module.exports;`;
  },
};

export default {
  files: 'tests/browser/**/*.test.ts',
  nodeResolve: { exportConditions: ['browser', 'production', 'default'] },
  // One page at a time: a browser draws no frames for a page behind another, and tests that wait for one would not end.
  concurrency: 1,
  middleware: [sourceOfWorkers],
  plugins: [
    papaparseAsModule,
    esbuildPlugin({ ts: true, target: 'es2022', tsconfig: 'tsconfig.json' }),
  ],
  browsers: [
    chromeLauncher({ launchOptions: { executablePath: process.env.CHROME_PATH, args: flags } }),
  ],
  testFramework: { config: { timeout: 170_000 } },
  testsFinishTimeout: 1_200_000,
};
