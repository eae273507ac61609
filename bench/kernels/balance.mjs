// Line balancing on the published problems: how many are proven, how fast, and with --highs the same by a MILP solver.
import { kernel } from './bundle.mjs';
import { lineCases } from './line-cases.mjs';
import { median, options, row } from './options.mjs';

const { seconds, only, quiet } = options({ seconds: 10, only: '', quiet: false });
const cases = lineCases(only);
const { balance } = await kernel('balance');
const widths = [-30, 6, 6, 6, 8, 8, 10, 12];

/** Whether the bins hold no more than the capacity and respect the precedence. */
function holds({ times, capacity, precedence }, bins, count) {
  const load = new Array(count).fill(0);
  bins.forEach((bin, task) => (load[bin] += times[task]));
  return load.every((sum) => sum <= capacity) && precedence.every(([a, b]) => bins[a] <= bins[b]);
}

const results = [];
if (!quiet)
  console.log(row(['case', 'lb', 'ub', 'bins', 'proven', 'bound', 'ms', 'states'], widths));
for (const one of cases) {
  const start = performance.now();
  const answer = balance({
    ...one,
    clock: () => performance.now(),
    deadlineMs: start + seconds * 1000,
  });
  const ms = performance.now() - start;
  const within =
    answer.count >= one.lower &&
    answer.count <= one.upper &&
    answer.lowerBound <= one.upper &&
    holds(one, answer.bins, answer.count);
  results.push({ ...one, answer, ms, within });
  const cells = [
    one.lower,
    one.upper,
    answer.count,
    answer.proven ? 'yes' : 'no',
    answer.lowerBound,
  ];
  if (!quiet || !answer.proven || !within)
    console.log(
      row([`${one.set} ${one.name}`, ...cells, ms.toFixed(0), answer.nodes], widths) +
        (within ? '' : '  OUTSIDE'),
    );
}
for (const set of new Set(results.map((r) => r.set))) {
  const mine = results.filter((r) => r.set === set);
  const share = (test) => `${mine.filter(test).length}/${mine.length}`;
  console.log(
    `${set}: proven ${share((r) => r.answer.proven)}, within bounds ${share((r) => r.within)}, ` +
      `median ${median(mine.map((r) => r.ms)).toFixed(1)} ms, longest ${Math.max(...mine.map((r) => r.ms)).toFixed(0)} ms`,
  );
}
