import { allocate } from '../../src/planner/search/index.js';
import { families, planOfFamily } from './families.js';
const [family = 'B', seeds = '1,2', effort = '1', seconds] = process.argv.slice(2);
for (const seed of seeds.split(',').map(Number)) {
  const plan = planOfFamily(families[family]!, seed);
  const at = process.cpuUsage();
  let first = 0;
  const began = performance.now();
  const found = allocate(plan, {
    clock: () => performance.now(),
    effort: Number(effort),
    ...(seconds ? { seconds: Number(seconds) } : {}),
    onBetter: () => void (first ||= performance.now() - began),
  });
  const used = process.cpuUsage(at);
  const cpu = (used.user + used.system) / 1e6;
  console.log(
    family,
    seed,
    `cpu ${cpu.toFixed(2)} s, first ${first.toFixed(0)} ms`,
    found.unplaced.length,
    found.certificate.objectives
      .map((o) => `${o.name} ${o.value}${o.proven ? '=' : ` >=${o.lowerBound}`}`)
      .join(', '),
    (found as any).steps ?? '',
    found.certificate.verified,
  );
}
