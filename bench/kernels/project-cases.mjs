// Reads the published project scheduling problems in place.
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { published } from './bundle.mjs';

function numbersOf(line) {
  return line.trim().split(/\s+/).map(Number);
}

function readSm(path) {
  const lines = readFileSync(path, 'latin1').split(/\r?\n/);
  const at = (text) => lines.findIndex((line) => line.startsWith(text));
  const jobs = Number(lines[at('jobs')].split(':')[1]);
  const kinds = Number(lines[at('  - renewable')].match(/:\s*(\d+)/)[1]);
  const arcs = lines.slice(at('PRECEDENCE') + 2, at('PRECEDENCE') + 2 + jobs).flatMap((line) => {
    const [job, , , ...next] = numbersOf(line);
    return next.map((other) => [job - 1, other - 1, 0]);
  });
  const rows = lines.slice(at('REQUESTS') + 3, at('REQUESTS') + 3 + jobs).map(numbersOf);
  return {
    durations: Int32Array.from(rows, (r) => r[2]),
    demands: Array.from({ length: kinds }, (_, k) => Int32Array.from(rows, (r) => r[3 + k])),
    capacities: numbersOf(lines[at('RESOURCEAVAIL') + 2]).slice(0, kinds),
    precedence: arcs,
  };
}

/** All cases: set, name, the problem, and the best bounds known. Empty, with a message, where absent. */
export function projectCases(only) {
  const folder = join(published, 'project-scheduling-1997');
  if (!existsSync(folder)) {
    console.log(`skipped: no published problems at ${published}`);
    return [];
  }
  const [, ...lines] = readFileSync(join(folder, 'best_known.csv'), 'utf8').trim().split(/\r?\n/);
  return lines
    .map((line) => line.split(','))
    .filter(([set, name]) => `${set} ${name}`.includes(only))
    .map(([set, name, lower, upper]) => ({
      set,
      name,
      lower: Number(lower),
      upper: Number(upper),
      ...readSm(join(folder, set, `${name}.sm`)),
    }));
}
