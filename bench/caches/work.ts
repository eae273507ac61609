// What a cache could save: a plan opened, edited, held against its windows, planned, mended and simulated. Told as JSON,
// milliseconds of processor time by part, and a digest of all answers.
import { createHash } from 'node:crypto';
import { jsonPieces } from '../../src/cli/print/listed.js';
import { fit } from '../../src/cli/verbs/fit.js';
import { applyEdit } from '../../src/edits/index.js';
import { handbackOf } from '../../src/engine/handback/handback.js';
import { Session } from '../../src/engine/incremental/session.js';
import { allocate, replan } from '../../src/engine/search.js';
import type { Allocation } from '../../src/planner/search/types.js';
import { planFromDocument } from '../../src/tables/index.js';
import { planOf } from '../shared/plan.js';
import { windowEdit, workEdit } from '../recompute/edits.js';

const digest = createHash('sha256');
const ms: Record<string, number> = {};

function part(name: string, work: () => unknown): void {
  const before = process.cpuUsage();
  const answer = work();
  const { user, system } = process.cpuUsage(before);
  ms[name] = (user + system) / 1000;
  digest.update(JSON.stringify(answer) ?? '');
}

/** A clock that goes on by the same at each look, so that a search does the same steps however fast they are. */
function steps(): () => number {
  let at = 0;
  return () => (at += 1);
}

let document = planOf(120, 320, 8);
const session = new Session();
let results = session.recompute(document);
part('open', () => (results = session.recompute((document = planOf(150, 400, 8)))).packages);
part('edits', () => {
  for (let turn = 0; turn < 60; turn += 1) {
    const { edit } = (turn % 2 === 0 ? windowEdit : workEdit)(document, results, turn);
    document = applyEdit(document, edit);
    results = session.recompute(document);
    for (let at = 0; at < 40; at += 1) void results.fits[(at * 97) % results.fits.length]?.fits;
  }
  return results.packages;
});
const { plan, packagesLeftOut } = planFromDocument(planOf(60, 160, 8));
part('fit', () => {
  let characters = 0;
  for (const piece of jsonPieces(fit({ plan, packagesLeftOut }).json)) {
    digest.update(piece);
    characters += piece.length;
  }
  return characters;
});
let made: Allocation | undefined;
part('plan', () => (made = allocate(plan, { seconds: 3, clock: steps() })).placements);
const { placements } = made!;
part('mend', () => {
  const used = placements.find(({ window }) => window !== null)!.window;
  const windows = plan.windows.map((window) =>
    window.id === used ? { ...window, status: 'withdrawn' as const } : window,
  );
  return replan({ ...plan, windows }, made!, { seconds: 3, clock: steps() }).allocation.placements;
});
part('handback', () =>
  handbackOf(plan, { placements, seed: 1, runs: 2000 }).map(({ window, simulation }) => [
    window,
    simulation.outlook,
  ]),
);
console.log(JSON.stringify({ ms, digest: digest.digest('hex') }));
