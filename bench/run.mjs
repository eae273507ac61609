// One bench by its name, without a TypeScript runner: `node bench/run.mjs recompute/compare`. What follows the name is
// handed on. The bench runs in a process of its own, in which it may ask for the memory to be swept.
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, rmSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const root = fileURLToPath(new URL('..', import.meta.url));
const [name, ...rest] = process.argv.slice(2);
const entry = join(root, 'bench', `${name}.ts`);
if (!name || !existsSync(entry)) {
  console.error(`There is no bench/${name ?? ''}.ts; give a name such as recompute/compare.`);
  process.exit(2);
}
const outfile = join(
  root,
  'node_modules/.cache/possession-fit/bench',
  `${name}.${process.pid}.mjs`,
);
mkdirSync(dirname(outfile), { recursive: true });
await build({
  entryPoints: [entry],
  bundle: true,
  packages: 'external',
  platform: 'node',
  format: 'esm',
  target: 'node20',
  outfile,
  logLevel: 'error',
});
const { status } = spawnSync(process.execPath, ['--expose-gc', outfile, ...rest], {
  cwd: root,
  stdio: 'inherit',
});
rmSync(outfile, { force: true });
process.exit(status ?? 1);
