// Plans of the shape that users have, planned and told in one table, each answer looked at by the checker:
// `node bench/plans.mjs [--families A,B] [--seeds 1,2,3] [--effort 1] [--seconds N]`. Processor time, not the wall clock's.
import { parseArgs } from 'node:util';
import { allocate } from '../../src/planner/search/index.js';
import { verify } from '../../src/verify/index.js';
import { conditions } from '../shared/figures.js';
import { families, planOfFamily } from './families.js';

const { values: asked } = parseArgs({
  options: {
    families: { type: 'string', default: Object.keys(families).join() },
    seeds: { type: 'string', default: '1,2,3,4' },
    effort: { type: 'string', default: '1' },
    seconds: { type: 'string' },
  },
});

const processorSeconds = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1e6;
};

console.log(conditions());
console.log(
  'family seed | cpu s | first s | unplaced | minutes late (at least) | finish | windows',
);
for (const name of asked.families.split(',')) {
  const family = families[name];
  if (!family) throw new Error(`there is no family ${name}`);
  for (const seed of asked.seeds.split(',').map(Number)) {
    const plan = planOfFamily(family, seed);
    const began = processorSeconds();
    let first: number | undefined;
    const found = allocate(plan, {
      clock: () => 1000 * processorSeconds(),
      effort: Number(asked.effort),
      ...(asked.seconds !== undefined && { seconds: Number(asked.seconds) }),
      onBetter: () => void (first ??= processorSeconds() - began),
    });
    const seconds = processorSeconds() - began;
    const { certificate, unplaced } = found;
    const faults = verify(plan, found);
    if (faults.length > 0) throw new Error(`${name} ${seed}: ${faults[0]!.text}`);
    const values = ['key-dates', 'finish', 'fewest-windows'].map((each) => {
      const one = certificate.objectives.find((objective) => objective.name === each)!;
      return one.proven ? `${one.value}, proven` : `${one.value} (${one.lowerBound})`;
    });
    console.log(
      [`${name} ${seed}`, seconds.toFixed(1), (first ?? seconds).toFixed(2), unplaced.length]
        .concat(values)
        .join(' | '),
    );
  }
}
console.log(conditions());
