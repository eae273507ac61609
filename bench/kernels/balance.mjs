// Line balancing on the published problems: how many are proven, how fast.
// --highs gives the same cases, with the same time, to HiGHS as a mixed-integer program; --every N takes each Nth case.
import { byHighs } from './balance-milp.mjs';
import { kernel } from './bundle.mjs';
import { lineCases } from './line-cases.mjs';
import { clockOf, median, options, row } from './options.mjs';

const { seconds, only, quiet, cpu, highs, every } = options({
  seconds: 10,
  only: '',
  quiet: false,
  cpu: false,
  highs: false,
  every: 1,
});
const cases = lineCases(only).filter((_, i) => i % every === 0);
const { balance } = await kernel('balance');
const widths = [-30, 6, 6, 6, 8, 8, 10, 12];

/** Whether the bins hold no more than the capacity and respect the precedence. */
function holds({ times, capacity, precedence }, bins, count) {
  const load = new Array(count).fill(0);
  bins.forEach((bin, task) => (load[bin] += times[task]));
  return load.every((sum) => sum <= capacity) && precedence.every(([a, b]) => bins[a] <= bins[b]);
}

const clock = clockOf(cpu);
const results = [];
if (!quiet)
  console.log(row(['case', 'lb', 'ub', 'bins', 'proven', 'bound', 'ms', 'states'], widths));
for (const one of cases) {
  const start = clock();
  const answer = balance({
    ...one,
    clock,
    deadlineMs: start + seconds * 1000,
  });
  const ms = clock() - start;
  const within =
    answer.count >= one.lower &&
    answer.count <= one.upper &&
    answer.lowerBound <= one.upper &&
    holds(one, answer.bins, answer.count);
  const other = highs ? await byHighs(one, one.upper + 1, seconds) : undefined;
  results.push({ ...one, answer, ms, within, other });
  const cells = [
    one.lower,
    one.upper,
    answer.count,
    answer.proven ? 'yes' : 'no',
    answer.lowerBound,
  ];
  const beside = other
    ? `  HiGHS: ${other.count ?? '-'} ${other.status} ${other.ms.toFixed(0)} ms`
    : '';
  if (!quiet || !answer.proven || !within)
    console.log(
      row([`${one.set} ${one.name}`, ...cells, ms.toFixed(0), answer.nodes], widths) +
        (within ? '' : '  OUTSIDE') +
        beside,
    );
}
for (const set of new Set(results.map((r) => r.set))) {
  const mine = results.filter((r) => r.set === set);
  const share = (test) => `${mine.filter(test).length}/${mine.length}`;
  console.log(
    `${set}: proven ${share((r) => r.answer.proven)}, within bounds ${share((r) => r.within)}, ` +
      `median ${median(mine.map((r) => r.ms)).toFixed(1)} ms, longest ${Math.max(...mine.map((r) => r.ms)).toFixed(0)} ms`,
  );
  if (highs)
    console.log(
      `${set}, HiGHS: proven ${share((r) => r.other.status === 'Optimal')}, ` +
        `median ${median(mine.map((r) => r.other.ms)).toFixed(1)} ms`,
    );
}
