// The published cases through the whole command line: CSV in, allocate, JSON out; compared with the published answers.
//   node bench/allocate.mjs [--set 1993|n20|n50|n100|j30|j60] [--seconds 10] [--limit N]
// Reads ../shared/benchmarks in place and says so where it is absent.
import { execFileSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';

const root = fileURLToPath(new URL('..', import.meta.url));
const data = join(root, '../shared/benchmarks');
if (!existsSync(data)) {
  console.log('The benchmark data (../shared/benchmarks) is not here: nothing was run.');
  process.exit(0);
}
const { values: asked } = parseArgs({
  options: {
    set: { type: 'string', default: '1993' },
    seconds: { type: 'string', default: '10' },
    limit: { type: 'string' },
  },
});
const folder = mkdtempSync(join(tmpdir(), 'allocate-'));
process.on('exit', () => rmSync(folder, { recursive: true, force: true }));
const csv = (path) =>
  readFileSync(join(data, path), 'utf8')
    .trim()
    .split(/\r?\n/)
    .slice(1)
    .map((line) => line.split(','));
const two = (n) => String(n).padStart(2, '0');
/** Local text in UTC of a minute after 2027-01-01 00:00. */
const at = (minute) => {
  const when = new Date(Date.UTC(2027, 0, 1) + minute * 60_000);
  return `${when.getUTCFullYear()}-${two(when.getUTCMonth() + 1)}-${two(when.getUTCDate())} ${two(when.getUTCHours())}:${two(when.getUTCMinutes())}`;
};

function run(name, windows, work, resources, first) {
  const put = (file, lines) => {
    const path = join(folder, file);
    writeFileSync(path, `${lines.join('\n')}\n`);
    return path;
  };
  const args = [
    'scripts/cli.mjs',
    'allocate',
    '--json',
    '--zone',
    'UTC',
    '--first',
    first,
    '--seconds',
    asked.seconds,
    '--windows',
    put('windows.csv', ['window,start,end', ...windows]),
    '--work',
    put('work.csv', ['package,activity,after,minutes,resources', ...work]),
    '--resources',
    put('resources.csv', ['resource,capacity', ...resources]),
  ];
  const began = performance.now();
  const out = execFileSync('node', args, { cwd: root, encoding: 'utf8', maxBuffer: 1 << 28 });
  return { answer: JSON.parse(out), ms: performance.now() - began };
}

function balancing(name, times, arcs, capacity, most) {
  const windows = Array.from(
    { length: most },
    (_, i) => `W${i + 1},${at(i * (capacity + 60))},${at(i * (capacity + 60) + capacity)}`,
  );
  const work = times.map((minutes, i) => {
    const before = arcs.filter(([, to]) => to === i + 1).map(([from]) => `A${from}`);
    return `P,A${i + 1},${before.join(';')},${minutes},crew:1`;
  });
  return run(name, windows, work, ['crew,1'], 'fewest-windows');
}

function readIn2(file) {
  const lines = readFileSync(join(data, 'line-balancing-1993/graphs', file), 'utf8')
    .trim()
    .split(/\r?\n/)
    .map((line) => line.trim());
  const n = Number(lines[0]);
  const arcs = [];
  for (const line of lines.slice(n + 1)) {
    const [a, b] = line.split(',').map(Number);
    if (!(a > 0)) break;
    arcs.push([a, b]);
  }
  return { times: lines.slice(1, n + 1).map(Number), arcs };
}

function readAlb(path) {
  const part = (head) =>
    readFileSync(join(data, path), 'utf8').split(`<${head}>`)[1].split('<')[0].trim().split(/\s+/);
  const times = part('task times')
    .map(Number)
    .filter((_, i) => i % 2 === 1);
  const arcs = part('precedence relations')
    .filter((one) => one !== '')
    .map((one) => one.split(',').map(Number));
  return { times, arcs };
}

function readSm(path) {
  const lines = readFileSync(join(data, path), 'utf8').split(/\r?\n/);
  const after = (head, skip) =>
    lines.slice(lines.findIndex((line) => line.startsWith(head)) + skip);
  const numbers = (line) => line.trim().split(/\s+/).map(Number);
  const until = (rows) =>
    rows.slice(
      0,
      rows.findIndex((line) => line.startsWith('*')),
    );
  const successors = until(after('PRECEDENCE', 2)).map(numbers);
  const requests = until(after('REQUESTS', 3)).map(numbers);
  return { successors, requests, capacities: numbers(after('RESOURCEAVAIL', 2)[0]) };
}

const results = [];
const limit = Number(asked.limit ?? Infinity);
if (asked.set === '1993') {
  for (const [file, , cycle, published, least] of csv('line-balancing-1993/optima.csv').slice(
    0,
    limit,
  )) {
    const { times, arcs } = readIn2(file);
    const most = Math.min(times.length, Number(published) + 5);
    results.push({
      name: `${file} ${cycle}`,
      low: Number(least),
      high: Number(published),
      ...balancing(file, times, arcs, Number(cycle), most),
    });
  }
} else if (asked.set.startsWith('n')) {
  for (const [, name, , cycle, low, high] of csv('line-balancing-2013/bounds.csv')
    .filter((row) => row[0] === asked.set)
    .slice(0, limit)) {
    const { times, arcs } = readAlb(`line-balancing-2013/${asked.set}/${name}.alb`);
    results.push({
      name,
      low: Number(low),
      high: Number(high),
      ...balancing(name, times, arcs, Number(cycle), Number(high) + 5),
    });
  }
} else {
  const known = new Map(csv('project-scheduling-1997/best_known.csv').map((row) => [row[1], row]));
  for (const file of readdirSync(join(data, 'project-scheduling-1997', asked.set)).slice(
    0,
    limit,
  )) {
    const { successors, requests, capacities } = readSm(
      `project-scheduling-1997/${asked.set}/${file}`,
    );
    const total = requests.reduce((sum, row) => sum + row[2], 0);
    const work = requests.map(([id, , minutes, ...amounts]) => {
      const before = successors
        .filter((row) => row.slice(3).includes(id))
        .map((row) => `A${row[0]}`);
      const needs = amounts.flatMap((amount, k) => (amount > 0 ? [`R${k + 1}:${amount}`] : []));
      return `P,A${id},${before.join(';')},${minutes},${needs.join(';')}`;
    });
    const resources = capacities.map((capacity, k) => `R${k + 1},${capacity}`);
    const [, , low, high] = known.get(file.replace('.sm', ''));
    results.push({
      name: file,
      low: Number(low),
      high: Number(high),
      ...run(file, [`W1,${at(0)},${at(total + 10)}`], work, resources, 'finish'),
    });
  }
}

let inside = 0;
let proven = 0;
let best = 0;
let gap = 0;
for (const { name, low, high, answer, ms } of results) {
  const value = asked.set.startsWith('j')
    ? (Date.parse(answer.finishesAt) - Date.UTC(2027, 0, 1)) / 60_000
    : answer.windowsUsed;
  const ok =
    value >= low &&
    answer.unplaced.length === 0 &&
    answer.certificate.verified &&
    answer.certificate.lowerBound <= high;
  inside += ok && value <= high ? 1 : 0;
  best += value <= high ? 1 : 0;
  proven += answer.certificate.proven ? 1 : 0;
  gap += (value - high) / high;
  const wrong = !ok || (answer.certificate.proven && value > high);
  if (wrong || value > high || !answer.certificate.proven)
    console.log(
      `${wrong ? 'WRONG ' : ''}${name}: ${value} of ${low}..${high}, bound ${answer.certificate.lowerBound}, ${answer.certificate.proven ? 'proven' : 'not proven'}, ${Math.round(ms)} ms`,
    );
}
const times = results.map((one) => one.ms).sort((a, b) => a - b);
console.log(
  `${asked.set}: ${results.length} cases, ${inside} within the published bounds, ${best} at or below the best known, ${proven} proven ` +
    `(${((100 * proven) / results.length).toFixed(1)} %), mean gap ${((100 * gap) / results.length).toFixed(2)} %, median ${Math.round(times[times.length >> 1])} ms with process start`,
);
