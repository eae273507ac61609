// Project scheduling on the published problems: how many at the best known value, how many proven, the gap, the time.
import { kernel } from './bundle.mjs';
import { clockOf, median, options, row } from './options.mjs';
import { projectCases } from './project-cases.mjs';

const { seconds, only, quiet, cpu } = options({ seconds: 10, only: '', quiet: false, cpu: false });
const cases = projectCases(only);
const { project } = await kernel('project');
const widths = [-14, 8, 8, 8, 8, 8, 10];

/** Whether the starts respect the precedence and no resource is exceeded at any start. */
function holds({ durations, demands, capacities, precedence }, starts) {
  const order = precedence.every(([a, b, lag]) => starts[b] >= starts[a] + durations[a] + lag);
  const within = demands.every((demand, k) =>
    starts.every((t) => {
      let used = 0;
      starts.forEach((s, i) => (used += s <= t && t < s + durations[i] ? demand[i] : 0));
      return used <= capacities[k];
    }),
  );
  return order && within;
}

const clock = clockOf(cpu);
const results = [];
if (!quiet)
  console.log(row(['case', 'best lb', 'best ub', 'found', 'proven', 'bound', 'ms'], widths));
for (const one of cases) {
  const start = clock();
  const answer = project({
    ...one,
    clock,
    deadlineMs: start + seconds * 1000,
  });
  const ms = clock() - start;
  const sound =
    answer.makespan >= one.lower && answer.lowerBound <= one.upper && holds(one, answer.starts);
  results.push({ ...one, answer, ms, sound });
  const cells = [one.lower, one.upper, answer.makespan, answer.proven ? 'yes' : 'no'];
  if (!quiet || answer.makespan > one.upper || !answer.proven || !sound)
    console.log(
      row([one.name, ...cells, answer.lowerBound, ms.toFixed(0)], widths) +
        (sound ? '' : '  WRONG'),
    );
}
for (const set of new Set(results.map((r) => r.set))) {
  const mine = results.filter((r) => r.set === set);
  const share = (test) => `${mine.filter(test).length}/${mine.length}`;
  const gap =
    mine.reduce((sum, r) => sum + (r.answer.makespan / r.upper - 1) * 100, 0) / mine.length;
  console.log(
    `${set}: at best known ${share((r) => r.answer.makespan <= r.upper)}, proven ${share((r) => r.answer.proven)}, ` +
      `sound ${share((r) => r.sound)}, mean gap ${gap.toFixed(2)} %, median ${median(mine.map((r) => r.ms)).toFixed(1)} ms`,
  );
}
