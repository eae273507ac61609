// The heap held after a plan is worked out, and after 200 edits more, beside the peer's at the same sizes:
// `node bench/run.mjs memory/heap`. Each side and size has a process of its own.
import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { installPeer } from '../recompute/peer.js';
import { conditions, short, tell } from '../shared/figures.js';
import { exponent, sizes } from '../shared/sizes.js';
import type { Held } from './held.js';

const folder = (process.env['BENCH_PEER'] ??= mkdtempSync(join(tmpdir(), 'possession-fit-peer-')));
process.once('exit', () => {
  if (folder.includes('possession-fit-peer-')) rmSync(folder, { recursive: true, force: true });
});
const { name: against } = installPeer();
console.log(conditions());

// Without verdicts: they grow by windows times packages, all else by the rows.
const grown = sizes.map(([windows, activities]) => ({
  size: windows,
  value: compare(`${windows} x ${activities}`, windows, activities, 2),
}));
console.log(`  ours grows by exponent ${exponent(grown).toFixed(2)}`);
compare('5000 x 160, 200,000 verdicts', 5000, 160, 4, 'pairs');

/** Prints both sides of one size; gives the megabytes of ours. */
function compare(name: string, ...plan: readonly (number | string)[]): number {
  const [ours, peer] = [heldBy('ours', plan), heldBy('peer', plan)];
  const figure = { bench: 'memory', against, unit: 'MB' };
  tell({ ...figure, what: `${name}, worked out`, ours: ours.full, peer: peer.full });
  console.log(`  after 200 edits: ours ${short(ours.edited)}, the peer ${short(peer.edited)} MB`);
  return ours.full;
}

function heldBy(side: 'ours' | 'peer', plan: readonly (number | string)[]): Held {
  const args = ['bench/run.mjs', 'memory/one', side, ...plan.map(String)];
  return JSON.parse(execFileSync(process.execPath, args, { encoding: 'utf8' })) as Held;
}
