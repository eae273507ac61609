import type { AccessWindow, Activity, Worded } from '../../model/index.js';
import type { Reason } from '../fit/types.js';
import { sayReason } from '../reason-sentences.js';
import { isBooked, neverCodes, type NeverCode } from './eligibility.js';
import type { Skeleton } from './skeleton.js';

/**
 * Why a window can never take some inside activities, however long it were: one reason a cause with all that it keeps
 * out, empty when it can take each. Times, resources and links are not looked at.
 *
 * O(groups x causes + activities) for the first window of its kind, O(causes) for those that take and bar the same.
 */
export function neverTakes(window: AccessWindow, { groups }: Pick<Skeleton, 'groups'>): Reason[] {
  return causesOf(window, groups).map(({ code, activity, names }) => ({
    code,
    ...neverWords(code, window, activity, names),
    ...(code !== 'withdrawn' && { activities: names }),
  }));
}

/** One cause, the first activity that it keeps out, and the names of all. */
interface Cause {
  readonly code: NeverCode;
  readonly activity: Activity;
  readonly names: readonly string[];
}

const known = new WeakMap<Skeleton['groups'], Map<string, readonly Cause[]>>();

function causesOf(window: AccessWindow, groups: Skeleton['groups']): readonly Cause[] {
  let ofGroups = known.get(groups);
  if (!ofGroups) known.set(groups, (ofGroups = new Map()));
  const key = groups.some(({ activity }) => activity.window !== undefined)
    ? JSON.stringify([window.id, kindOf(window)])
    : kindOf(window);
  let causes = ofGroups.get(key);
  if (!causes) ofGroups.set(key, (causes = workedOut(window, groups)));
  return causes;
}

const kinds = new WeakMap<AccessWindow, string>();

/** All of a window that says which work it bars, its name apart. */
function kindOf(window: AccessWindow): string {
  let kind = kinds.get(window);
  if (kind === undefined) {
    const { status, lines, extent, isolation } = window;
    const sections = isolation.map(({ section }) => section);
    kinds.set(window, (kind = JSON.stringify([status, lines, extent, sections])));
  }
  return kind;
}

function workedOut(window: AccessWindow, groups: Skeleton['groups']): readonly Cause[] {
  const found = new Map<string, { code: NeverCode; groups: Group[] }>();
  for (const group of groups) {
    if (group.activity.place === 'outside') continue;
    for (const code of neverCodes(window, group.activity)) {
      const cause = neverWords(code, window, group.activity, []).text;
      const same = found.get(cause);
      if (same) same.groups.push(group);
      else found.set(cause, { code, groups: [group] });
    }
  }
  return [...found.values()].map(({ code, groups }) => ({
    code,
    activity: groups[0]!.activity,
    names: namesOf(groups),
  }));
}

type Group = Skeleton['groups'][number];

/** The activities of some groups, in the order of the work. */
function namesOf(groups: readonly Group[]): readonly string[] {
  if (groups.length === 1) return groups[0]!.names;
  return groups
    .flatMap(({ names, members }) => names.map((name, at) => ({ name, at: members[at]! })))
    .sort((a, b) => a.at - b.at)
    .map(({ name }) => name);
}

/**
 * Why in words, once it is known to be so, of an activity or of several that it keeps out alike.
 *
 * @param more Windows beside it of which the same holds.
 */
export function neverWords(
  code: NeverCode,
  { id, lines, extent, isolation }: AccessWindow,
  activity: Activity,
  activities: readonly string[] = [activity.id],
  more = 0,
): Required<Worded> {
  const given = { activities, window: id, ...(more > 0 && { more }) };
  switch (code) {
    case 'withdrawn':
      return sayReason(code, { window: id, ...(more > 0 && { more }) });
    case 'fixed-elsewhere':
      return sayReason(code, { activities, fixed: activity.window!, ...(more > 0 && { more }) });
    case 'lines-not-blocked': {
      const open = activity.lines.filter((line) => !lines.includes(line));
      return sayReason(code, { ...given, open, blocked: lines });
    }
    case 'outside-extent': {
      const [own, booked] = [activity.extent!, extent!];
      return sayReason(code, {
        ...given,
        below: booked.from - own.from,
        above: own.to - booked.to,
        from: booked.from,
        to: booked.to,
      });
    }
    case 'isolation-not-booked': {
      const sections = activity.isolation.filter((section) => !isBooked({ isolation }, section));
      return sayReason(code, { ...given, sections });
    }
  }
}
