// npm run api-docs: docs/api, the pages about what the package gives without a page, from the docstrings of the core.
// The generator is a package of its own, so that nobody else has to install it.
import { existsSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { root, run } from './install.mjs';

const own = join(root, 'scripts/api-docs');
if (!existsSync(join(own, 'node_modules/typedoc-plugin-missing-exports')))
  run('npm', ['install', '--ignore-scripts', '--no-audit', '--no-fund', '--no-package-lock'], {
    cwd: own,
  });

const out = join(root, 'docs/api');
rmSync(out, { recursive: true, force: true });
run(join(own, 'node_modules/.bin/typedoc'), [
  '--plugin',
  join(own, 'node_modules/typedoc-plugin-markdown/dist/index.js'),
  '--plugin',
  join(own, 'node_modules/typedoc-plugin-missing-exports/index.js'),
  '--placeInternalsInOwningModule',
  '--tsconfig',
  join(root, 'tsconfig.build.json'),
  '--entryPoints',
  join(root, 'src/index.ts'),
  '--out',
  out,
  '--name',
  'possession-fit',
  '--readme',
  'none',
  '--excludeInternal',
  '--excludePrivate',
  '--disableSources',
  '--hideBreadcrumbs',
  '--skipErrorChecking',
]);
