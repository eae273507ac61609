// How the time to a first, verified plan of all work grows as plans double: `node bench/run.mjs growth/scheduler`. The
// search gets no time to better it: with time it uses what it is given, so that there would be nothing to measure.
import { allocate } from '../../src/engine/search.js';
import { planFromDocument } from '../../src/tables/index.js';
import { conditions, now, sweep } from '../shared/figures.js';
import { planOf } from '../shared/plan.js';
import { tellGrowth } from './tell-growth.js';

const TURNS = 3;
const list = [
  [25, 50],
  [50, 100],
  [100, 200],
  [200, 400],
  [400, 800],
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
    const { certificate, placements, unplaced } = allocate(plan, { seconds: 0, clock: now });
    const ms = now() - before;
    if (!certificate.verified) throw new Error(`the plan of ${name} was not verified`);
    if (turn >= 0) times.push(ms);
    else console.log(`  ${name}: ${placements.length} placed, ${unplaced.length} not`);
  }
tellGrowth('a first plan of all work, verified', list, 'ours');
console.log(conditions());
