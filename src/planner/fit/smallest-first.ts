import { jointReason } from './joint-reasons.js';
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
