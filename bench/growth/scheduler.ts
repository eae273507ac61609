// How the time to a first, verified plan of all work grows as plans double: `node bench/run.mjs growth/scheduler`. The
// search is stopped once it has told of one: with time it uses what it is given, so that there would be nothing to measure. Of
// smaller plans the first that is told of comes after more tries, so that their times tell nothing of growth.
import { allocate } from '../../src/engine/search.js';
import type { Allocation } from '../../src/planner/search/types.js';
import { planFromDocument } from '../../src/tables/index.js';
import { conditions, now, sweep } from '../shared/figures.js';
import { planOf } from '../shared/plan.js';
import { tellGrowth } from './tell-growth.js';

const TURNS = 3;
const list = [
  [200, 400],
  [400, 800],
  [800, 1600],
  [1600, 3200],
].map(([windows, activities]) => ({
  size: windows!,
  name: `${windows} x ${activities}`,
  plan: planFromDocument(planOf(windows!, activities!)).plan,
  times: [] as number[],
}));

console.log(conditions());
for (let turn = -1; turn < TURNS; turn += 1)
  for (const { plan, times, name } of list) {
    sweep();
    const before = now();
    let first: { readonly ms: number; readonly plan: Allocation } | undefined;
    allocate(plan, {
      clock: now,
      onBetter: (soFar) => {
        if (first) return;
        const found = soFar();
        first = { ms: now() - before, plan: found };
      },
      shouldStop: () => first !== undefined,
    });
    const { certificate, placements, unplaced } = first!.plan;
    if (!certificate.verified || placements.length === 0)
      throw new Error(`no verified plan of ${name} was made`);
    if (turn >= 0) times.push(first!.ms);
    else console.log(`  ${name}: ${placements.length} placed, ${unplaced.length} not`);
  }
tellGrowth('a first plan of all work, verified', list, 'ours');
console.log(conditions());
