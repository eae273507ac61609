// What each cache of the core saves: the same work with and without it, in turns. `node bench/caches.mjs [PART OF A NAME] [--turns 3]`
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { build } from 'esbuild';
import { nodeBundle } from '../scripts/bundle-cli.mjs';
import { caches } from './caches/sites.mjs';

const root = dirname(dirname(fileURLToPath(import.meta.url)));
const { values, positionals } = parseArgs({
  options: { turns: { type: 'string', default: '3' } },
  allowPositionals: true,
});
const turns = Number(values.turns);
const folder = mkdtempSync(join(tmpdir(), 'possession-fit-caches-'));

/** Bundles the work, one file of the core changed. */
async function bundled(name, file, changed) {
  const outfile = join(folder, `${name}.mjs`);
  const path = file && join(root, file);
  await build({
    entryPoints: [join(root, 'bench/caches/work.ts')],
    outfile,
    ...nodeBundle,
    plugins: [
      {
        name: 'forget',
        setup: ({ onLoad }) =>
          onLoad({ filter: /\.ts$/ }, (asked) =>
            asked.path === path ? { contents: changed, loader: 'ts' } : undefined,
          ),
      },
    ],
  });
  return outfile;
}

function measured(outfile) {
  const { stdout, stderr, status } = spawnSync('node', [outfile], { cwd: root, encoding: 'utf8' });
  if (status !== 0) throw new Error(stderr);
  return JSON.parse(stdout);
}
const least = (runs, part) => Math.min(...runs.map(({ ms }) => ms[part]));

const all = caches(root).filter(({ name }) => positionals.every((part) => name.includes(part)));
const whole = await bundled('whole');
const rows = {};
let differs = false;
for (const [at, { name, file, changed }] of all.entries()) {
  const without = await bundled(`without-${at}`, file, changed);
  const pairs = Array.from({ length: turns }, () => [measured(whole), measured(without)]);
  const [kept, forgot] = [pairs.map(([one]) => one), pairs.map(([, other]) => other)];
  const same = forgot.every(({ digest }) => digest === kept[0].digest);
  differs ||= !same;
  rows[name] = {
    ...Object.fromEntries(
      Object.keys(kept[0].ms).map((part) => [
        part,
        Number((least(forgot, part) / least(kept, part)).toFixed(2)),
      ]),
    ),
    same,
  };
  console.log(name, JSON.stringify(rows[name]));
}
rmSync(folder, { recursive: true, force: true });
console.log('Time without the cache over time with it; 1 where it saves nothing.');
console.table(rows);
if (differs) process.exitCode = 1;
