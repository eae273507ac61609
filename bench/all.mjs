// Every bench that needs nothing but this repository and the npm registry, one after another, and all their figures in
// one table at the end: `node bench/all.mjs [--cpu] [NAME...]`. With `--cpu` processor time is told in place of the wall
// clock's. Names such as `recompute/compare` leave out the others.
import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { cpus, loadavg, tmpdir, totalmem } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const benches = [
  'tables/read',
  'tables/first-answer',
  'calendar/convert',
  'recompute/compare',
  'recompute/over-port',
  'growth/plans',
  'growth/scheduler',
  'memory/heap',
  'risk/simulate',
];
const asked = process.argv.slice(2);
const byProcessor = asked.includes('--cpu');
const named = asked.filter((one) => one !== '--cpu');
const unknown = named.find((one) => !benches.includes(one));
if (unknown !== undefined) {
  console.error(`There is no bench ${unknown}; there are ${benches.join(', ')}.`);
  process.exit(2);
}

const folder = mkdtempSync(join(tmpdir(), 'possession-fit-bench-'));
const figures = join(folder, 'figures.jsonl');
const failed = [];
const began = performance.now();
const load = () => loadavg()[0].toFixed(1);
const loadBefore = load();
try {
  for (const name of named.length > 0 ? named : benches) {
    console.log(`\n${name}`);
    const { status } = spawnSync(
      process.execPath,
      [fileURLToPath(new URL('run.mjs', import.meta.url)), name],
      {
        stdio: 'inherit',
        env: {
          ...process.env,
          BENCH_FIGURES: figures,
          BENCH_PEER: process.env.BENCH_PEER ?? join(folder, 'peer'),
          BENCH_CLOCK: byProcessor ? 'cpu' : 'wall',
        },
      },
    );
    if (status !== 0) failed.push(name);
  }
  const lines = existsSync(figures) ? readFileSync(figures, 'utf8').trim().split('\n') : [];
  console.log(`\n${tableOf(lines.map((line) => JSON.parse(line)))}\n`);
} finally {
  rmSync(folder, { recursive: true, force: true });
}
const [{ model }] = cpus();
console.log(
  `${new Date().toISOString().slice(0, 16)}Z, ${cpus().length} cores (${model.trim()}), ${Math.round(totalmem() / 2 ** 30)} GiB, ` +
    `Node ${process.version}, ${byProcessor ? 'processor time' : 'wall clock'}, load ${loadBefore} before and ${load()} after, ` +
    `${Math.round((performance.now() - began) / 60_000)} min`,
);
if (failed.length > 0) {
  console.error(`Failed: ${failed.join(', ')}.`);
  process.exit(1);
}

/** A Markdown table; the ratio is ours over the peer's. */
function tableOf(list) {
  const short = (value) => (value >= 100 ? value.toFixed(0) : value.toPrecision(3));
  const rows = list.map(({ bench, what, ours, peer, against, unit, aim }) => [
    bench,
    what,
    `${short(ours)} ${unit}`,
    `${short(peer)} ${unit}`,
    against,
    short(ours / peer),
    aim ?? '',
  ]);
  const head = ['bench', 'what', 'ours', 'peer', 'against', 'ratio', 'aim'];
  const rule = head.map(() => '---');
  return [head, rule, ...rows].map((cells) => `| ${cells.join(' | ')} |`).join('\n');
}
