import type { AccessWindow, Activity } from '../../model/index.js';
import { momentText } from '../problem/eligibility.js';
import type { Problem } from '../problem/problem.js';
import { fewestTimeCauses, type TimeCase, type TimeCause } from './time-causes.js';
import type { Reason } from './types.js';

/** The fewest causes that are enough for the no before all others, and marked. */
export function smallestFirst(one: TimeCase, reasons: readonly Reason[]): Reason[] {
  const { window, problem } = one;
  const { causes, proven } = fewestTimeCauses(one);
  const enough = proven ? 'proven' : 'found';
  const first = new Set<Reason>();
  const added: Reason[] = [];
  for (const cause of causes) {
    const own = reasons.filter((reason) => isOf(cause, reason));
    for (const reason of own) first.add(reason);
    if (own.length === 0) added.push({ ...jointReason(cause, problem, window), enough });
  }
  return [
    ...reasons
      .filter((reason) => first.has(reason))
      .map((reason) => ({ ...reason, enough }) as const),
    ...added,
    ...reasons.filter((reason) => !first.has(reason)),
  ];
}

function isOf(cause: TimeCause, { code, resources }: Reason): boolean {
  if (cause === 'end') return code === 'too-short' || code === 'no-usable-stretch';
  if (cause === 'key-date' || cause === 'not-before') return code === cause;
  if (cause === 'alone') return code === 'place-taken';
  return (
    code.startsWith('resource-') && resources?.includes(cause.slice('resource '.length)) === true
  );
}

/** A cause that is only one together with others. */
function jointReason(cause: TimeCause, problem: Problem, window: AccessWindow): Reason {
  if (cause === 'end') return { code: 'too-short', text: `${window.id} is too short for it` };
  if (cause === 'key-date' || cause === 'not-before')
    return {
      code: cause,
      text:
        cause === 'key-date'
          ? `it would not be done by the key date (${datesOf(cause, problem, window)})`
          : `it could not begin sooner (not before: ${datesOf(cause, problem, window)})`,
    };
  if (cause === 'alone')
    return {
      code: 'place-taken',
      text: `work that must have its place alone leaves too little time in ${window.id}`,
    };
  const name = cause.slice('resource '.length);
  return {
    code: 'resource-short',
    text: `there is not enough of ${name} at the right time in ${window.id}`,
    resources: [name],
  };
}

/** The dates of one kind with the activities that bear them. */
export function datesOf(
  cause: 'key-date' | 'not-before',
  problem: Problem,
  window: AccessWindow,
): string {
  const of = (activity: Activity): number | undefined =>
    cause === 'key-date' ? activity.keyDate : activity.notBefore;
  return problem.tasks
    .flatMap(({ activity }) => {
      const at = of(activity);
      return at === undefined ? [] : [`${activity.id} ${momentText(at, window.zone)}`];
    })
    .join(', ');
}
