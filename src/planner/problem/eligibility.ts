import { isoText } from '../../calendar/index.js';
import type { AccessWindow, Activity } from '../../model/index.js';
import type { Reason } from '../fit/types.js';

/**
 * Why a window can never take an inside activity, however long it were: one reason a cause, empty when it can.
 * Times, resources and links are not looked at.
 */
export function neverTakes(window: AccessWindow, activity: Activity): Reason[] {
  const reasons: Reason[] = [];
  if (window.status === 'withdrawn')
    reasons.push({ code: 'withdrawn', text: `${window.id} is withdrawn and takes no work` });
  if (activity.window !== undefined && activity.window !== window.id)
    reasons.push({
      code: 'fixed-elsewhere',
      text: `${activity.id} is fixed in ${activity.window} by the planner`,
    });
  const open = activity.lines.filter((line) => !window.lines.includes(line));
  if (window.lines.length > 0 && open.length > 0)
    reasons.push({
      code: 'lines-not-blocked',
      text: `${activity.id} needs ${open.join(' and ')} blocked; ${window.id} blocks ${window.lines.join(', ')}`,
    });
  const { extent } = activity;
  if (extent && window.extent) {
    const short = window.extent.from - extent.from;
    const over = extent.to - window.extent.to;
    if (short > 0 || over > 0)
      reasons.push({
        code: 'outside-extent',
        text: `${activity.id} reaches ${reachText(short, over)} outside ${window.id} (${metres(window.extent.from)} to ${metres(window.extent.to)} m)`,
      });
  }
  const live = activity.isolation.filter(
    (section) => !window.isolation.some((booked) => booked.section === section),
  );
  if (live.length > 0)
    reasons.push({
      code: 'isolation-not-booked',
      text: `${activity.id} needs ${live.join(' and ')} dead; ${window.id} does not book ${live.length === 1 ? 'it' : 'them'}`,
    });
  return reasons;
}

/** The code of the first of `neverTakes`, without its text; `undefined` when the window can take the activity. */
export function neverCode(window: AccessWindow, activity: Activity): NeverCode | undefined {
  if (window.status === 'withdrawn') return 'withdrawn';
  if (activity.window !== undefined && activity.window !== window.id) return 'fixed-elsewhere';
  if (window.lines.length > 0 && !activity.lines.every((line) => window.lines.includes(line)))
    return 'lines-not-blocked';
  const { extent } = activity;
  if (extent && window.extent)
    if (extent.from < window.extent.from || extent.to > window.extent.to) return 'outside-extent';
  if (activity.isolation.length > 0 && bookedCount(window, activity) < activity.isolation.length)
    return 'isolation-not-booked';
  return undefined;
}

export type NeverCode =
  'withdrawn' | 'fixed-elsewhere' | 'lines-not-blocked' | 'outside-extent' | 'isolation-not-booked';

function bookedCount(window: AccessWindow, { isolation }: Activity): number {
  let count = 0;
  for (const section of isolation)
    if (window.isolation.some((booked) => booked.section === section)) count += 1;
  return count;
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
