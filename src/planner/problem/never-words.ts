import type { AccessWindow, Activity, Worded } from '../../model/index.js';
import type { Reason } from '../fit/types.js';
import { sayReason } from '../reason-sentences.js';
import { isBooked, neverCodes, type NeverCode } from './eligibility.js';
import type { Skeleton } from './skeleton.js';

/** What windows of one kind never take of some work, however long they were. Times, resources and links are not looked at. */
export interface Barring {
  /** One for each cause, with all the inside activities that it keeps out; empty where none is kept out. */
  readonly causes: readonly Cause[];
  /** By activity, whether the window takes it; outside work always. */
  readonly takes: readonly boolean[];
  /** No inside activity is taken. */
  readonly takesNone: boolean;
}

interface Cause {
  readonly code: NeverCode;
  /** Of all that it keeps out. */
  readonly names: readonly string[];
  readonly words: (window: string) => Required<Worded>;
}

/** Why a window can never take some work, one reason a cause. */
export function neverReasons({ id }: AccessWindow, { causes }: Barring): Reason[] {
  return causes.map(({ code, names, words }) => {
    const { text, sentence } = words(id);
    return code === 'withdrawn'
      ? { code, text, sentence }
      : { code, text, sentence, activities: names };
  });
}

const known = new WeakMap<Skeleton['groups'], Map<string, Barring>>();

/** O(groups x causes + activities) for the first window of its kind. */
export function barringOf(window: AccessWindow, skeleton: Skeleton): Barring {
  const { groups } = skeleton;
  let ofGroups = known.get(groups);
  if (!ofGroups) known.set(groups, (ofGroups = new Map()));
  const key = skeleton.isFixed ? JSON.stringify([window.id, kindOf(window)]) : kindOf(window);
  let barring = ofGroups.get(key);
  if (!barring) ofGroups.set(key, (barring = workedOut(window, skeleton)));
  return barring;
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

function workedOut(window: AccessWindow, { groups, groupOf }: Skeleton): Barring {
  const found = new Map<string, { code: NeverCode; groups: Group[] }>();
  const taken = groups.map((group) => {
    if (group.activity.place === 'outside') return true;
    const codes = neverCodes(window, group.activity);
    for (const code of codes) {
      const cause = neverWords(code, window, group.activity, []).text;
      const same = found.get(cause);
      if (same) same.groups.push(group);
      else found.set(cause, { code, groups: [group] });
    }
    return codes.length === 0;
  });
  return {
    causes: [...found.values()].map(({ code, groups }) => {
      const names = namesOf(groups);
      return { code, names, words: wordsOf(code, window, groups[0]!.activity, names) };
    }),
    takes: groupOf.map((group) => taken[group]!),
    takesNone: groups.every(({ activity }, at) => activity.place === 'outside' || !taken[at]),
  };
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
  window: AccessWindow,
  activity: Activity,
  activities: readonly string[] = [activity.id],
  more = 0,
): Required<Worded> {
  return wordsOf(code, window, activity, activities, more)(window.id);
}

/** The same words of every window of a kind, by its name. What is copied for each window has all of its names already. */
function wordsOf(
  code: NeverCode,
  { lines, extent, isolation }: AccessWindow,
  activity: Activity,
  activities: readonly string[],
  more = 0,
): Cause['words'] {
  const besides = more > 0 ? { more } : {};
  const given = { activities, window: '', ...besides };
  switch (code) {
    case 'withdrawn':
      return (window) => sayReason(code, { window, ...besides });
    case 'fixed-elsewhere': {
      const said = sayReason(code, { activities, fixed: activity.window!, ...besides });
      return () => said;
    }
    case 'lines-not-blocked': {
      const open = activity.lines.filter((line) => !lines.includes(line));
      const all = { ...given, open, blocked: lines };
      return (window) => sayReason(code, { ...all, window });
    }
    case 'outside-extent': {
      const [own, { from, to }] = [activity.extent!, extent!];
      const all = { ...given, below: from - own.from, above: own.to - to, from, to };
      return (window) => sayReason(code, { ...all, window });
    }
    case 'isolation-not-booked': {
      const sections = activity.isolation.filter((section) => !isBooked({ isolation }, section));
      const all = { ...given, sections };
      return (window) => sayReason(code, { ...all, window });
    }
  }
}
