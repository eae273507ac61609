// The line balancing of one case as a mixed-integer program in LP text, and its answer by HiGHS.
import { fork } from 'node:child_process';
import { fileURLToPath } from 'node:url';

/**
 * The program: x_i_s is 1 when task i is in bin s, y_s when bin s is used, bins used in order.
 *
 * Tasks get only the bins between their earliest and latest, from the times of all predecessors and followers.
 */
function programOf({ times, capacity, precedence }, most) {
  const n = times.length;
  const reach = (pairs) => {
    const next = Array.from({ length: n }, () => []);
    for (const [a, b] of pairs) next[a].push(b);
    return Array.from({ length: n }, (_, i) => {
      const seen = new Set();
      const open = [i];
      while (open.length > 0) {
        for (const j of next[open.pop()].filter((k) => !seen.has(k))) {
          seen.add(j);
          open.push(j);
        }
      }
      return Math.ceil([...seen].reduce((sum, j) => sum + times[j], times[i]) / capacity);
    });
  };
  const early = reach(precedence.map(([a, b]) => [b, a]));
  const late = reach(precedence).map((bins) => most + 1 - bins);
  const binsOf = (i) =>
    Array.from({ length: late[i] - early[i] + 1 }, (_, k) => Math.max(1, early[i]) + k).filter(
      (s) => s <= most,
    );
  const where = Array.from({ length: n }, (_, i) => binsOf(i));
  const lines = [
    'Minimize',
    ` obj: ${span(most)
      .map((s) => `y${s}`)
      .join(' + ')}`,
    'Subject To',
  ];
  where.forEach((bins, i) => lines.push(` ${bins.map((s) => `x${i}_${s}`).join(' + ')} = 1`));
  for (const s of span(most)) {
    const inside = where.flatMap((bins, i) =>
      bins.includes(s) && times[i] > 0 ? [`${times[i]} x${i}_${s}`] : [],
    );
    lines.push(` ${[...inside, `- ${capacity} y${s}`].join(' + ').replace('+ -', '-')} <= 0`);
    if (s > 1) lines.push(` y${s} - y${s - 1} <= 0`);
  }
  for (const [a, b] of precedence) {
    const plus = where[a].map((s) => `${s} x${a}_${s}`).join(' + ');
    lines.push(` ${plus} ${where[b].map((s) => `- ${s} x${b}_${s}`).join(' ')} <= 0`);
  }
  const names = [
    ...span(most).map((s) => `y${s}`),
    ...where.flatMap((bins, i) => bins.map((s) => `x${i}_${s}`)),
  ];
  return [...lines, 'Binary', ...names.map((name) => ` ${name}`), 'End'].join('\n');
}

function span(most) {
  return Array.from({ length: most }, (_, k) => k + 1);
}

/**
 * Bins, proven and ms of HiGHS on one case; it may use `most` bins. Runs in its own process, which is ended when it
 * overruns the limit by far, since a wasm call cannot be interrupted.
 */
export function byHighs(one, most, seconds) {
  const started = performance.now();
  return new Promise((resolve) => {
    const child = fork(fileURLToPath(import.meta.url), ['solve'], { stdio: 'ignore', env: {} });
    const settle = (answer) => {
      clearTimeout(timer);
      child.kill('SIGKILL');
      resolve({ ms: performance.now() - started, ...answer });
    };
    const timer = setTimeout(() => settle({ status: 'overran' }), seconds * 1000 * 2 + 5000);
    child.on('message', settle);
    child.on('exit', () => settle({ status: 'failed' }));
    child.send({ text: programOf(one, most), seconds });
  });
}

if (process.argv[2] === 'solve' && process.send !== undefined) {
  process.once('message', async ({ text, seconds }) => {
    const { default: load } = await import('highs');
    const highs = await load();
    const start = performance.now();
    const answer = highs.solve(text, { time_limit: seconds, output_flag: false });
    const whole = Number.isFinite(answer.ObjectiveValue) ? Math.round(answer.ObjectiveValue) : null;
    process.send({ status: answer.Status, count: whole, ms: performance.now() - start });
  });
}
