import type { UnstatedPair } from './same-place.js';
import type { ClaimedUnstated, ReportFault } from './types.js';
import { say } from './say.js';
import type { Job } from './work.js';

/**
 * Pairs of activities in one package, with the line handed back between them and no statement whether it is fit to run:
 * a piece of the first is in an earlier window than a piece of the second. Repeated work is paired with itself only if
 * it has no make-safe time.
 */
function betweenWindows(jobs: ReadonlyMap<string, Job>): ClaimedUnstated[] {
  const packages = new Map<string, Job[]>();
  for (const job of jobs.values())
    if (job.activity.place === 'inside' && job.pieces.length > 0) {
      const own = packages.get(job.activity.package);
      if (own) own.push(job);
      else packages.set(job.activity.package, [job]);
    }
  const found: ClaimedUnstated[] = [];
  for (const own of packages.values())
    for (const first of own) {
      const { id, madeGoodBy, work } = first.activity;
      if (madeGoodBy !== undefined) continue;
      for (const second of own) {
        if (second === first && (work.kind === 'whole' || work.makeSafeMinutes > 0)) continue;
        const apart = first.pieces.some((piece) =>
          second.pieces.some((later) => later.window !== piece.window && piece.from < later.from),
        );
        if (apart) found.push({ activity: id, other: second.activity.id, kind: 'between-windows' });
      }
    }
  return found;
}

/** Checks that the claimed list has exactly these pairs. */
export function checkUnstated(
  jobs: ReadonlyMap<string, Job>,
  unstatedPairs: readonly UnstatedPair[],
  claimed: readonly ClaimedUnstated[],
  report: ReportFault,
): void {
  const keyOf = ({ activity, other, kind }: ClaimedUnstated): string =>
    JSON.stringify([
      kind,
      ...(kind === 'same-place' ? [activity, other].sort() : [activity, other]),
    ]);
  const wanted = new Map<string, ClaimedUnstated>();
  for (const window of betweenWindows(jobs)) wanted.set(keyOf(window), window);
  for (const { activity, other } of unstatedPairs) {
    const pair = { activity, other, kind: 'same-place' };
    wanted.set(keyOf(pair), pair);
  }
  const reported = new Set<string>();
  for (const unstated of claimed) {
    const key = keyOf(unstated);
    const pair = { activity: unstated.activity, other: unstated.other };
    if (!wanted.has(key))
      report({
        code: 'unstated-extra',
        activity: unstated.activity,
        text: say('listed-not-stated', pair),
      });
    else if (reported.has(key))
      report({
        code: 'unstated-twice',
        activity: unstated.activity,
        text: say('pair-listed-twice', pair),
      });
    reported.add(key);
  }
  for (const [key, { activity, other, kind }] of wanted)
    if (!reported.has(key))
      report({
        code: 'unstated-missing',
        activity,
        text: say(kind === 'same-place' ? 'place-not-stated' : 'handback-not-stated', {
          activity,
          other,
        }),
      });
}
