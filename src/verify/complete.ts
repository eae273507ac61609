import type { PlacedWork, PlanAnswer, ReportFault } from './types.js';
import { isAllPlaced, type Job } from './work.js';

/** Reports placements of activities that are not in the plan. */
export function checkKnown(unknownPieces: readonly PlacedWork[], report: ReportFault): void {
  for (const { activity } of unknownPieces)
    report({ code: 'unknown-activity', activity, text: `the plan has no ${activity}` });
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
    const say = (code: string, text: string): void =>
      report({ code, activity, text: `${activity} ${text}` });
    if (!job) say('unknown-activity', 'is listed as not placed, and the plan has it not');
    else if (isAllPlaced(job)) say('listed-though-placed', 'is listed as not placed, and it is');
    if (listed.has(activity)) say('listed-twice', 'is listed twice as not placed');
    if (reasons.length === 0) say('no-reason', 'is listed as not placed without a reason');
    listed.add(activity);
  }
  for (const job of jobs.values()) {
    const { id } = job.activity;
    if (isAllPlaced(job) || listed.has(id)) continue;
    const what = job.placed > 0 ? `${job.left - job.placed} units of ${id} are` : `${id} is`;
    report({
      code: 'left-out',
      activity: id,
      text: `${what} neither placed nor listed as left out`,
    });
  }
}
