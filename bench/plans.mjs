// Plans of the shape that users have: see bench/plans/compare.ts. `node bench/plans.mjs [--families A,B] [--seeds 1,2]`.
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';

const run = fileURLToPath(new URL('run.mjs', import.meta.url));
const { status } = spawnSync(process.execPath, [run, 'plans/compare', ...process.argv.slice(2)], {
  stdio: 'inherit',
});
process.exit(status ?? 1);
