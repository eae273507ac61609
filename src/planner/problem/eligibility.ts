import { isoText } from '../../calendar/index.js';
import type { AccessWindow, Activity } from '../../model/index.js';
import type { Reason } from '../fit/types.js';
import { namesText } from '../names-text.js';
import type { Skeleton } from './skeleton.js';

/**
 * Why a window can never take some inside activities, however long it were: one reason a cause with all that it keeps
 * out, empty when it can take each. Times, resources and links are not looked at.
 *
 * O(groups x causes + activities).
 */
export function neverTakes(window: AccessWindow, { groups }: Pick<Skeleton, 'groups'>): Reason[] {
  const found = new Map<string, { code: NeverCode; groups: Group[] }>();
  for (const group of groups) {
    if (group.activity.place === 'outside') continue;
    for (const code of neverCodes(window, group.activity)) {
      const cause = causeText(code, window, group.activity, true);
      const known = found.get(cause);
      if (known) known.groups.push(group);
      else found.set(cause, { code, groups: [group] });
    }
  }
  return [...found.values()].map(({ code, groups }) => {
    const names = namesOf(groups);
    return {
      code,
      text: neverText(code, window, groups[0]!.activity, names),
      ...(code !== 'withdrawn' && { activities: names }),
    };
  });
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

export type NeverCode =
  'withdrawn' | 'fixed-elsewhere' | 'lines-not-blocked' | 'outside-extent' | 'isolation-not-booked';

const codes: readonly NeverCode[] = [
  'withdrawn',
  'fixed-elsewhere',
  'lines-not-blocked',
  'outside-extent',
  'isolation-not-booked',
];

/** The codes of `neverTakes`, without its texts. */
export function neverCodes(window: AccessWindow, activity: Activity): readonly NeverCode[] {
  return neverCode(window, activity) === undefined
    ? none
    : codes.filter((code) => isBarredBy(code, window, activity));
}

const none: readonly NeverCode[] = [];

/** The first of `neverCodes`; `undefined` when the window can take the activity. */
export function neverCode(window: AccessWindow, activity: Activity): NeverCode | undefined {
  for (const code of codes) if (isBarredBy(code, window, activity)) return code;
  return undefined;
}

function isBarredBy(code: NeverCode, window: AccessWindow, activity: Activity): boolean {
  switch (code) {
    case 'withdrawn':
      return window.status === 'withdrawn';
    case 'fixed-elsewhere':
      return activity.window !== undefined && activity.window !== window.id;
    case 'lines-not-blocked':
      return (
        window.lines.length > 0 && !activity.lines.every((line) => window.lines.includes(line))
      );
    case 'outside-extent': {
      const { extent } = activity;
      if (!extent || !window.extent) return false;
      return extent.from < window.extent.from || extent.to > window.extent.to;
    }
    case 'isolation-not-booked':
      return activity.isolation.some((section) => !isBooked(window, section));
  }
}

function isBooked({ isolation }: AccessWindow, section: string): boolean {
  return isolation.some((booked) => booked.section === section);
}

/** Why in words, once it is known to be so, of an activity or of several that it keeps out alike. */
export function neverText(
  code: NeverCode,
  window: AccessWindow,
  activity: Activity,
  names: readonly string[] = [activity.id],
): string {
  const cause = causeText(code, window, activity, names.length > 1);
  return code === 'withdrawn' ? cause : `${namesText(names)} ${cause}`;
}

/** The same without the names. */
function causeText(
  code: NeverCode,
  window: AccessWindow,
  activity: Activity,
  several: boolean,
): string {
  switch (code) {
    case 'withdrawn':
      return `${window.id} is withdrawn and takes no work`;
    case 'fixed-elsewhere':
      return `${several ? 'are' : 'is'} fixed in ${activity.window!} by the planner`;
    case 'lines-not-blocked': {
      const open = activity.lines.filter((line) => !window.lines.includes(line));
      return `${several ? 'need' : 'needs'} ${open.join(' and ')} blocked; ${window.id} blocks ${window.lines.join(', ')}`;
    }
    case 'outside-extent': {
      const [own, booked] = [activity.extent!, window.extent!];
      const reach = reachText(booked.from - own.from, own.to - booked.to);
      return `${several ? 'reach' : 'reaches'} ${reach} outside ${window.id} (${metres(booked.from)} to ${metres(booked.to)} m)`;
    }
    case 'isolation-not-booked': {
      const live = activity.isolation.filter((section) => !isBooked(window, section));
      return `${several ? 'need' : 'needs'} ${live.join(' and ')} dead; ${window.id} does not book ${live.length === 1 ? 'it' : 'them'}`;
    }
  }
}

function reachText(short: number, over: number): string {
  return [
    ...(short > 0 ? [`${metres(short)} m below`] : []),
    ...(over > 0 ? [`${metres(over)} m above`] : []),
  ].join(' and ');
}

/** A moment as a person reads it on site: `2027-03-28 03:00`. */
export function momentText(at: number, zone: string): string {
  return isoText(at, zone).slice(0, 16).replace('T', ' ');
}

/** Metres to the decimetre, rounded up: a shortfall never reads as nothing. */
const metres = (size: number): number => Math.ceil(size * 10 - 1e-6) / 10;
