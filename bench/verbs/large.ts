// A verb on the plan of a region, in this process: `BENCH_CLOCK=cpu node bench/run.mjs verbs/large fit 200 800 8`, or
// `handback`. Beside it stands the least that any answer needs: of `fit` yes or no for each pair, of `handback` one
// simulation of each window.
import { fit } from '../../src/cli/verbs/fit.js';
import { jsonPieces } from '../../src/cli/print/listed.js';
import { handbackOf } from '../../src/engine/handback/handback.js';
import { allocate } from '../../src/engine/search.js';
import { LedgerCache, packagesIn, quickStates } from '../../src/planner/fit/index.js';
import { windowChance } from '../../src/risk/index.js';
import { planFromDocument } from '../../src/tables/index.js';
import { conditions, now, tell, timed } from '../shared/figures.js';
import { planOf } from '../shared/plan.js';

const RUNS = { seed: 1, runs: 10_000 };
const [verb = 'fit', windows = '200', activities = '800', perPackage = '8'] = process.argv.slice(2);
const { plan, packagesLeftOut } = planFromDocument(planOf(+windows, +activities, +perPackage));
const what = `${verb} of ${windows} windows x ${activities} activities, ${perPackage} a package`;

console.log(conditions());
const { ours, peer, against } = verb === 'handback' ? handback() : fits();
tell({ bench: 'verbs', what, ours, peer, against, unit: 'ms' });
console.log(`  at most ${Math.round(process.resourceUsage().maxRSS / 1024)} MB in memory`);
console.log(conditions());

function fits() {
  const { ms: peer } = timed(() => {
    const book = new LedgerCache(plan);
    for (const own of packagesIn(plan.activities).values())
      quickStates(plan, own, plan.windows, book);
  });
  const { ms: ours, value } = timed(() => {
    let characters = 0;
    for (const piece of jsonPieces(fit({ plan, packagesLeftOut }).json)) characters += piece.length;
    return characters;
  });
  console.log(`  ${(value / 1e6).toFixed(1)} million characters written`);
  return { ours, peer, against: 'yes or no alone' };
}

function handback() {
  const { placements } = allocate(plan, { seconds: 5, clock: now });
  const used = plan.windows.filter(({ id }) =>
    placements.some((placement) => placement.window === id),
  );
  const { ms: peer } = timed(() => {
    for (const window of used) windowChance(plan, window, placements, RUNS, 0.95);
  });
  const { ms: ours } = timed(() => handbackOf(plan, { placements, ...RUNS }));
  return { ours, peer, against: 'one simulation a window' };
}
