/**
 * The tasks 0 .. n-1 in an order in which every predecessor comes first; smallest number first among equals.
 *
 * @throws {RangeError} When an edge names a task outside 0 .. n-1, or the edges close a loop.
 */
export function topologicalOrder(
  n: number,
  edges: readonly (readonly [number, number, ...number[]])[],
): Int32Array {
  const waiting = new Int32Array(n);
  const after: number[][] = Array.from({ length: n }, () => []);
  for (const [a, b] of edges) {
    for (const task of [a, b]) {
      if (!Number.isInteger(task) || task < 0 || task >= n)
        throw new RangeError(`precedence names task ${task}, but there are ${n}`);
    }
    after[a]!.push(b);
    waiting[b]!++;
  }
  const order = new Int32Array(n);
  let filled = 0;
  for (let task = 0; task < n; task++) if (waiting[task] === 0) order[filled++] = task;
  for (let read = 0; read < filled; read++) {
    for (const next of after[order[read]!]!) if (--waiting[next]! === 0) order[filled++] = next;
  }
  if (filled < n)
    throw new RangeError(`the precedence closes a loop through ${n - filled} of ${n} tasks`);
  return order;
}
