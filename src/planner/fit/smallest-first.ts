import type { AccessWindow, Moment } from '../../model/index.js';
import type { Problem } from '../problem/problem.js';
import { sayReason } from '../reason-sentences.js';
import { fewestTimeCauses, type TimeCase, type TimeCause } from './time-causes.js';
import type { SharedReason } from './types.js';

/** The fewest causes that are enough for the no before all others, and marked. */
export function smallestFirst(item: TimeCase, reasons: readonly SharedReason[]): SharedReason[] {
  const { problem } = item;
  const { causes, proven } = fewestTimeCauses(item);
  const enough = proven ? 'proven' : 'found';
  const first = new Set<SharedReason>();
  const added: SharedReason[] = [];
  for (const cause of causes) {
    const own = reasons.filter((reason) => isOf(cause, reason));
    for (const reason of own) first.add(reason);
    if (own.length === 0) added.push({ ...jointReason(cause, problem), enough });
  }
  return [
    ...reasons
      .filter((reason) => first.has(reason))
      .map((reason) => ({ ...reason, enough }) as const),
    ...added,
    ...reasons.filter((reason) => !first.has(reason)),
  ];
}

function isOf(cause: TimeCause, { code, resources }: SharedReason): boolean {
  if (cause === 'end') return code === 'too-short' || code === 'no-usable-stretch';
  if (cause === 'key-date' || cause === 'not-before') return code === cause;
  if (cause === 'alone') return code === 'place-taken';
  return (
    code.startsWith('resource-') && resources?.includes(cause.slice('resource '.length)) === true
  );
}

/** A cause that is only one together with others. */
export function jointReason(cause: TimeCause, problem: Problem): SharedReason {
  if (cause === 'end')
    return { code: 'too-short', words: ({ id }) => sayReason('window-too-short', { window: id }) };
  if (cause === 'key-date' || cause === 'not-before') {
    const dated = datesOf(cause, problem);
    return {
      code: cause,
      words:
        cause === 'key-date'
          ? (window) => sayReason('not-by-key-date', { dates: dated(window) })
          : (window) => sayReason('not-sooner', { dates: dated(window) }),
    };
  }
  if (cause === 'alone')
    return {
      code: 'place-taken',
      words: ({ id }) => sayReason('alone-leaves-little', { window: id }),
    };
  return resourcesShort([cause.slice('resource '.length)]);
}

/** That there is not enough of one of some resources at the right time. */
export const resourcesShort = (resources: readonly string[]): SharedReason => ({
  code: 'resource-short',
  words: ({ id }) => sayReason('resource-at-the-time', { resources, window: id }),
  resources,
});

/** The dates of one kind with the activities that bear them, by the clocks of a window. */
export function datesOf(
  cause: 'key-date' | 'not-before',
  problem: Problem,
): (window: AccessWindow) => readonly (Moment & { readonly activity: string })[] {
  const dated = problem.tasks.flatMap(({ activity: { id, keyDate, notBefore } }) => {
    const at = cause === 'key-date' ? keyDate : notBefore;
    return at === undefined ? [] : [{ activity: id, at }];
  });
  return ({ zone }) => dated.map((date) => ({ ...date, zone }));
}
