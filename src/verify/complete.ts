import type { Phrase } from './plan-types.js';
import { say } from './say.js';
import type { PlacedWork, PlanAnswer, ReportFault } from './types.js';
import { isAllPlaced, type Job } from './work.js';

/** Reports placements of activities that are not in the plan. */
export function checkKnown(unknownPieces: readonly PlacedWork[], report: ReportFault): void {
  for (const { activity } of unknownPieces)
    report({ code: 'unknown-activity', activity, text: say('no-such-activity', { activity }) });
}

/** Checks that every activity is either placed in full or listed once as unplaced, with a reason. */
export function checkComplete(
  jobs: ReadonlyMap<string, Job>,
  unplaced: NonNullable<PlanAnswer['unplaced']>,
  report: ReportFault,
): void {
  const listed = new Set<string>();
  for (const { activity, reasons } of unplaced) {
    const job = jobs.get(activity);
    const found = (code: string, text: Phrase): void => report({ code, activity, text });
    const own = { activity };
    if (!job) found('unknown-activity', say('listed-though-unknown', own));
    else if (isAllPlaced(job)) found('listed-though-placed', say('listed-though-placed', own));
    if (listed.has(activity)) found('listed-twice', say('listed-twice', own));
    if (reasons.length === 0) found('no-reason', say('listed-without-reason', own));
    listed.add(activity);
  }
  for (const job of jobs.values()) {
    const { id } = job.activity;
    if (isAllPlaced(job) || listed.has(id)) continue;
    report({
      code: 'left-out',
      activity: id,
      text: say('neither-placed-nor-listed', {
        activity: id,
        units: job.placed > 0 ? job.left - job.placed : null,
      }),
    });
  }
}
