import { boundsOf, type Activity, type Fault } from '../../model/index.js';
import { cyclesOf } from './cycle.js';
import type { LinkContext, Refuse } from './link-context.js';
import { near } from './near.js';
import { problemOf } from '../parse/parsed.js';

const named = (activity: Activity): readonly string[] =>
  Array.isArray(activity.madeGoodBy) ? (activity.madeGoodBy as readonly string[]) : [];

/** Checks what activities name as making them good: that it is there, inside, not in a circle, in one window with it. */
export function checkMadeGood(
  activities: readonly Activity[],
  context: LinkContext,
  refuse: Refuse,
  faults: Fault[],
): void {
  if (activities.every((activity) => named(activity).length === 0)) return;
  const byId = new Map(activities.map((activity) => [activity.id, activity]));
  for (const activity of activities) {
    const names = named(activity);
    if (names.length > 0 && activity.place === 'outside') {
      faults.push(
        context.say(activity.id, 'made good by', 'warning', problemOf('made-good-of-outside-work')),
      );
    }
    for (const id of names) {
      const other = byId.get(id);
      if (id === activity.id) refuse(activity.id, 'made good by', problemOf('made-good-by-itself'));
      else if (!other && !context.activityRows.has(id))
        refuse(
          activity.id,
          'made good by',
          problemOf('made-good-not-known', { id, known: near(id, byId.keys()) }),
        );
      else if (other?.place === 'outside')
        refuse(activity.id, 'made good by', problemOf('made-good-outside', { id }));
    }
  }
  const bounds = boundsOf(activities);
  if (bounds.length === 0) return;
  const linked = withUnlinked(activities, bounds);
  const plain = new Set(cyclesOf(activities).flat());
  for (const cycle of cyclesOf(linked)) {
    if (cycle.some((id) => plain.has(id))) continue;
    const owner = bounds.find(({ activity, unlinked }) =>
      unlinked.some((id) => cycle.includes(id) && cycle.includes(activity)),
    );
    refuse(
      owner?.activity ?? cycle[0]!,
      'made good by',
      problemOf('made-good-in-a-circle', { cycle: [...cycle, cycle[0]!] }),
    );
  }
  for (const { activity, members } of bounds) {
    const fixed = [activity, ...members].flatMap((id) => {
      const window = byId.get(id)?.window;
      return window === undefined ? [] : [{ id, window }];
    });
    const other = fixed.find(({ window }) => window !== fixed[0]!.window);
    if (other)
      refuse(
        activity,
        'made good by',
        problemOf('made-good-in-another-window', {
          one: fixed[0]!.id,
          window: fixed[0]!.window,
          other: other.id,
          otherWindow: other.window,
        }),
      );
  }
}

/** The activities, with a link for each that is made good by work that waits for it by no chain. */
function withUnlinked(
  activities: readonly Activity[],
  bounds: ReturnType<typeof boundsOf>,
): readonly Activity[] {
  const added = new Map<string, string[]>();
  for (const { activity, unlinked } of bounds)
    for (const id of unlinked) added.set(id, [...(added.get(id) ?? []), activity]);
  return activities.map((activity) => {
    const more = added.get(activity.id);
    if (!more) return activity;
    const links = more.map((id) => ({ activity: id, from: 'finish', gapMinutes: 0 }) as const);
    return { ...activity, after: [...activity.after, ...links] };
  });
}

/** Leaves out what would be made good by work that is left out. */
export function dropNotMadeGood(
  activities: readonly Activity[],
  out: ReadonlySet<string>,
  refuse: Refuse,
): void {
  if (activities.every((activity) => named(activity).length === 0)) return;
  const known = new Set(activities.map((activity) => activity.id));
  for (const activity of activities) {
    if (out.has(activity.id) || activity.place === 'outside') continue;
    const lost = named(activity).find((id) => out.has(id) || !known.has(id));
    if (lost !== undefined)
      refuse(activity.id, 'made good by', problemOf('made-good-not-used', { lost }));
  }
}
