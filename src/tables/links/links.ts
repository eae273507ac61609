import type { AccessWindow, Activity, Fault } from '../../model/index.js';
import { cyclesOf } from './cycle.js';
import type { LinkContext, Refuse } from './link-context.js';
import { checkMadeGood, dropNotMadeGood } from './made-good-links.js';
import { near } from './near.js';

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
  const known = new Set(activities.map((activity) => activity.id));
  const windows = new Map(context.windows.map((window) => [window.id, window]));
  for (const activity of activities) {
    checkWindow(activity, windows, context, refuse, faults);
    checkResources(activity, context, faults);
    const uncured = activity.after.find((link) => link.cured);
    if (uncured && !context.curing)
      refuse(activity.id, 'after', {
        code: 'curing-not-set',
        message: `It waits for "${uncured.activity}" to cure, but the plan does not say how concrete cures.`,
        mend: 'Give the maturity that is asked for among the limits of the site, and a table of temperatures; or write a gap such as + 48 h.',
      });
    for (const { activity: id } of activity.after) {
      if (!known.has(id) && !context.activityRows.has(id)) {
        refuse(activity.id, 'after', {
          code: 'predecessor-not-known',
          message: `There is no activity "${id}".${near(id, known)}`,
          mend: 'Name an activity of the file, letter for letter, with ; between several.',
        });
      }
    }
  }
  for (const cycle of cyclesOf(activities)) {
    for (const id of cycle) out.add(id);
    faults.push(
      context.say(cycle[0]!, 'after', 'error', {
        code: 'predecessors-in-a-circle',
        message: `Each waits for the next, so none can start: ${[...cycle, cycle[0]!].join(' after ')}.`,
        mend: 'Take one of these out of its "after" cell.',
      }),
    );
  }
  checkMadeGood(activities, context, refuse, faults);
  for (let before = -1; before !== out.size;) {
    before = out.size;
    dropFollowers(activities, out, refuse);
    dropNotMadeGood(activities, out, refuse);
  }
  return { activities: activities.filter((activity) => !out.has(activity.id)), faults };
}

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
      context.say(activity.id, 'window', 'warning', {
        code: 'window-withdrawn',
        message: `Window "${activity.window}" is withdrawn and takes no work.`,
        mend: 'Choose another window, or leave the cell blank.',
      }),
    );
  }
  if (window) return;
  const unread = context.windowRows.has(activity.window);
  refuse(activity.id, 'window', {
    code: unread ? 'window-not-used' : 'window-not-known',
    message: unread
      ? `The row of window "${activity.window}" has an error, so this activity cannot be used either.`
      : `There is no window "${activity.window}".${near(activity.window, context.windowRows.keys())}`,
    mend: unread
      ? 'Mend the row of the window.'
      : 'Name a window of the file, or leave the cell blank.',
  });
}

function checkResources(activity: Activity, context: LinkContext, faults: Fault[]): void {
  if (!context.resources) return;
  for (const { resource } of activity.resources) {
    if (context.resources.some((item) => item.id === resource)) continue;
    faults.push(
      context.say(activity.id, 'resources', 'warning', {
        code: 'resource-not-known',
        message: `"${resource}" is not in the resources file, so it is taken to be without limit.${near(
          resource,
          context.resources.map((item) => item.id),
        )}`,
        mend: 'Add it to the resources, or correct its name.',
      }),
    );
  }
}

/** Leaves out what waits for something left out, and what waits for that, each once. O(n + links). */
function dropFollowers(activities: readonly Activity[], out: Set<string>, refuse: Refuse): void {
  const known = new Set(activities.map((activity) => activity.id));
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
      refuse(id, 'after', {
        code: 'predecessor-not-used',
        message: `It waits for "${lost[at]!}", whose row has an error, so it cannot be used either.`,
        mend: `Mend the row of "${lost[at]!}".`,
      });
    }
  }
}
