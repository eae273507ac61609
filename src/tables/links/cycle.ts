import type { Activity } from '../../model/index.js';

/**
 * The activities that wait, through others, for themselves: each circle once, from the activity first in the file, in
 * the order in which they wait. O(n + links), without recursion.
 */
export function cyclesOf(activities: readonly Activity[]): string[][] {
  const order = new Map(activities.map((activity, index) => [activity.id, index]));
  if (allEnd(activities, order)) return [];
  const state = new Uint8Array(activities.length);
  const cycles: string[][] = [];
  const [onPath, finished] = [1, 2];
  for (let root = 0; root < activities.length; root += 1) {
    if (state[root] !== 0) continue;
    const path: { at: number; next: number }[] = [{ at: root, next: 0 }];
    state[root] = onPath;
    while (path.length > 0) {
      const top = path.at(-1)!;
      const link = activities[top.at]!.after[top.next];
      top.next += 1;
      const to = link ? order.get(link.activity) : undefined;
      if (!link) {
        state[top.at] = finished;
        path.pop();
      } else if (to !== undefined && state[to] === 0) {
        state[to] = onPath;
        path.push({ at: to, next: 0 });
      } else if (to !== undefined && state[to] === onPath) {
        const circle = path.slice(path.findIndex((item) => item.at === to)).map((item) => item.at);
        cycles.push(fromFirst(circle).map((index) => activities[index]!.id));
      }
    }
  }
  return cycles;
}

/** Whether each is done once all that it waits for is, so that there is no circle. */
function allEnd(activities: readonly Activity[], order: ReadonlyMap<string, number>): boolean {
  // Most tables have everything after what it waits for.
  const isInOrder = activities.every(({ after }, at) =>
    after.every(({ activity }) => (order.get(activity) ?? -1) < at),
  );
  if (isInOrder) return true;
  // Each in turn tells those it waits for that nobody else of them waits any more.
  const followers = new Int32Array(activities.length);
  const before = activities.map(({ after }) => {
    const places: number[] = [];
    for (const { activity } of after) {
      const at = order.get(activity);
      if (at === undefined) continue;
      places.push(at);
      followers[at]! += 1;
    }
    return places;
  });
  const last = [...followers.keys()].filter((at) => followers[at] === 0);
  for (let head = 0; head < last.length; head += 1)
    for (const at of before[last[head]!]!) {
      followers[at]! -= 1;
      if (followers[at] === 0) last.push(at);
    }
  return last.length === activities.length;
}

function fromFirst(circle: readonly number[]): number[] {
  const start = circle.indexOf(circle.reduce((least, value) => Math.min(least, value)));
  return [...circle.slice(start), ...circle.slice(0, start)];
}
