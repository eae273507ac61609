import type { AccessWindow, Activity, Fault } from '../../model/index.js';
import { cyclesOf } from './cycle.js';
import type { LinkContext, Refuse } from './link-context.js';
import { checkMadeGood, dropNotMadeGood } from './made-good-links.js';
import { near } from './near.js';
import { problemOf } from '../parse/parsed.js';

export interface LinkedActivities {
  readonly activities: readonly Activity[];
  readonly faults: readonly Fault[];
}

/**
 * Checks what activities say of each other, of windows and of resources. An activity that waits for one that is not
 * there, for itself through others, or is fixed to no window, is left out with a fault; so is what waits for it.
 */
export function checkLinks(
  activities: readonly Activity[],
  context: LinkContext,
): LinkedActivities {
  const faults: Fault[] = [];
  const out = new Set<string>();
  const refuse: Refuse = (id, field, problem) => {
    out.add(id);
    faults.push(context.say(id, field, 'error', problem));
  };
  // Every activity has a row. Where as many have one, nothing is left out and the rows are all there is to know.
  const rows = context.activityRows;
  const known: Known =
    activities.length === rows.size ? rows : new Set(activities.map((activity) => activity.id));
  const listed = context.resources && new Set(context.resources.map((resource) => resource.id));
  const windows = new Map(context.windows.map((window) => [window.id, window]));
  let isInOrder = true;
  for (const activity of activities) {
    checkWindow(activity, windows, context, refuse, faults);
    checkResources(activity, listed, context, faults);
    const uncured = context.curing ? undefined : activity.after.find((link) => link.cured);
    if (uncured)
      refuse(activity.id, 'after', problemOf('curing-not-set', { activity: uncured.activity }));
    if (activity.after.length === 0) continue;
    const own = rows.get(activity.id)!;
    for (const { activity: id } of activity.after) {
      const row = rows.get(id);
      if (row === undefined)
        refuse(
          activity.id,
          'after',
          problemOf('predecessor-not-known', { id, known: near(id, known.keys()) }),
        );
      else isInOrder &&= row < own;
    }
  }
  // Most tables have everything after what it waits for.
  for (const cycle of isInOrder ? [] : cyclesOf(activities)) {
    for (const id of cycle) out.add(id);
    faults.push(
      context.say(
        cycle[0]!,
        'after',
        'error',
        problemOf('predecessors-in-a-circle', { cycle: [...cycle, cycle[0]!] }),
      ),
    );
  }
  checkMadeGood(activities, context, refuse, faults);
  // Every name has been found among the rows.
  if (out.size === 0 && known === rows) return { activities, faults };
  for (let before = -1; before !== out.size;) {
    before = out.size;
    dropFollowers(activities, known, out, refuse);
    dropNotMadeGood(activities, out, refuse);
  }
  return { activities: activities.filter((activity) => !out.has(activity.id)), faults };
}

/** The names of the activities that can be used. */
type Known = Pick<ReadonlySet<string>, 'has' | 'keys'>;

function checkWindow(
  activity: Activity,
  windows: ReadonlyMap<string, AccessWindow>,
  context: LinkContext,
  refuse: Refuse,
  faults: Fault[],
): void {
  if (activity.window === undefined) return;
  const window = windows.get(activity.window);
  if (window?.status === 'withdrawn') {
    faults.push(
      context.say(
        activity.id,
        'window',
        'warning',
        problemOf('window-withdrawn', { window: activity.window }),
      ),
    );
  }
  if (window) return;
  const { window: name } = activity;
  const names = context.windowRows;
  refuse(
    activity.id,
    'window',
    names.has(name)
      ? problemOf('window-not-used', { name })
      : problemOf('window-not-known', { name, known: near(name, names.keys()) }),
  );
}

function checkResources(
  activity: Activity,
  listed: ReadonlySet<string> | undefined,
  context: LinkContext,
  faults: Fault[],
): void {
  if (!listed) return;
  for (const { resource } of activity.resources) {
    if (listed.has(resource)) continue;
    faults.push(
      context.say(
        activity.id,
        'resources',
        'warning',
        problemOf('resource-not-known', {
          resource,
          known: near(resource, listed),
        }),
      ),
    );
  }
}

/** Leaves out what waits for something left out, and what waits for that, each once. O(n + links). */
function dropFollowers(
  activities: readonly Activity[],
  known: Known,
  out: Set<string>,
  refuse: Refuse,
): void {
  const isWhole = activities.every(({ after }) => after.every((link) => known.has(link.activity)));
  if (out.size === 0 && isWhole) return;
  const followers = new Map<string, string[]>();
  for (const { id, after } of activities) {
    for (const link of after) {
      const list = followers.get(link.activity);
      if (list) list.push(id);
      else followers.set(link.activity, [id]);
    }
  }
  const lost = [...out, ...[...followers.keys()].filter((id) => !known.has(id))];
  for (let at = 0; at < lost.length; at += 1) {
    for (const id of followers.get(lost[at]!) ?? []) {
      if (out.has(id)) continue;
      lost.push(id);
      refuse(id, 'after', problemOf('predecessor-not-used', { lost: lost[at]! }));
    }
  }
}
