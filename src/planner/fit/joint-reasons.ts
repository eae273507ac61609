import type { Instant } from '../../calendar/index.js';
import type { AccessWindow, Moment } from '../../model/index.js';
import type { Relaxation } from '../problem/compile.js';
import type { Problem } from '../problem/problem.js';
import { sayReason } from '../reason-sentences.js';
import { timeCauses, type TimeCause } from './time-causes.js';
import type { SharedReason } from './types.js';

/** A cause that is only one together with others. */
export function jointReason(cause: TimeCause, problem: Problem): SharedReason {
  if (cause === 'end')
    return { code: 'too-short', words: ({ id }) => sayReason('window-too-short', { window: id }) };
  if (cause === 'key-date' || cause === 'not-before') return datesReason(cause, problem);
  if (cause === 'alone')
    return {
      code: 'place-taken',
      words: ({ id }) => sayReason('alone-leaves-little', { window: id }),
    };
  const name = cause.slice('resource '.length);
  return {
    code: 'resource-short',
    words: ({ id }) => sayReason('resource-at-the-time', { resource: name, window: id }),
    resources: [name],
  };
}

type Dates = 'key-date' | 'not-before';

/** That dates of one kind keep the work out: of all activities, or of some. */
function datesReason(cause: Dates, problem: Problem, only?: readonly string[]): SharedReason {
  const dated = datesOf(cause, problem, only);
  return {
    code: cause,
    words:
      cause === 'key-date'
        ? (window) => sayReason('not-by-key-date', { dates: dated(window) })
        : (window) => sayReason('not-sooner', { dates: dated(window) }),
    ...(only && { activities: only }),
  };
}

/** The dates of one kind with the activities that bear them, by the clocks of a window. */
export function datesOf(
  cause: Dates,
  problem: Problem,
  only?: readonly string[],
): (window: AccessWindow) => readonly (Moment & { readonly activity: string })[] {
  const dated = datedIn(cause, problem).filter(({ activity }) => only?.includes(activity) ?? true);
  return ({ zone }) => dated.map((date) => ({ ...date, zone }));
}

function datedIn(cause: Dates, { tasks }: Problem): { activity: string; at: Instant }[] {
  return tasks.flatMap(({ activity: { id, keyDate, notBefore } }) => {
    const at = cause === 'key-date' ? keyDate : notBefore;
    return at === undefined ? [] : [{ activity: id, at }];
  });
}

/** A cause beside the end of a window, each date by itself. */
export type FineCause = Exclude<TimeCause, 'end' | Dates> | `${Dates} ${string}`;

/** All such causes that bear on a problem. */
export const fineCauses = (problem: Problem): FineCause[] =>
  timeCauses(problem).flatMap((cause): FineCause[] => {
    if (cause === 'end') return [];
    if (cause !== 'key-date' && cause !== 'not-before') return [cause];
    return datedIn(cause, problem).map(({ activity }) => `${cause} ${activity}` as const);
  });

/** Some of them as reasons, dates of one kind together. */
export const fineReasons = (causes: readonly FineCause[], problem: Problem): SharedReason[] =>
  timeCauses(problem).flatMap((cause): SharedReason[] => {
    if (cause === 'end') return [];
    if (cause !== 'key-date' && cause !== 'not-before')
      return causes.includes(cause) ? [jointReason(cause, problem)] : [];
    const only = datedIn(cause, problem).flatMap(({ activity }) =>
      causes.includes(`${cause} ${activity}`) ? [activity] : [],
    );
    return only.length === 0 ? [] : [datesReason(cause, problem, only)];
  });

/** What is left out of account where a reason is cured. */
export function curedBy({ code, resources = [], activities }: SharedReason): Relaxation[] {
  if (code === 'place-taken') return ['alone'];
  if (code === 'key-date' || code === 'not-before')
    return activities?.map((id) => `${code} ${id}` as const) ?? [code];
  return code.startsWith('resource-') ? resources.map((id) => `resource ${id}` as const) : [];
}
