import { uncovered } from './bands.js';
import { clockOf, type Clock } from './clock.js';
import type { AccessWindow, Stretch } from './plan-types.js';

/** When all of the given sections may be dead in a window, in order. */
export function deadIn(window: AccessWindow, sections: readonly string[]): Stretch[] {
  const clock = clockOf(window.zone);
  const live = window.isolation.flatMap(({ section, during }) => {
    if (!during || !sections.includes(section)) return [];
    const dead = during.flatMap((item) =>
      'fromMinute' in item ? eachDay(item.fromMinute, item.toMinute, window, clock) : [item],
    );
    return uncovered(window, dead);
  });
  return uncovered(window, live);
}

/** A daily band within a window; if an edge occurs twice in local time, the shorter reading. */
function eachDay(from: number, to: number, within: Stretch, clock: Clock): Stretch[] {
  const found: Stretch[] = [];
  const last = clock.dayAt(within.end);
  for (let day = clock.dayAt(within.start) - 2; day <= last; day += 1) {
    const over = to > from ? day : day + 1;
    const [shortest] = (['earlier', 'later'] as const)
      .flatMap((a) =>
        (['earlier', 'later'] as const).map((b) => ({
          start: clock.moment(day, from, a),
          end: clock.moment(over, to, b),
        })),
      )
      .filter(({ start, end }) => end > start)
      .sort((a, b) => a.end - a.start - (b.end - b.start) || a.start - b.start);
    if (shortest) found.push(shortest);
  }
  return found;
}
