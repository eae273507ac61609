import { whyNotCured } from './curing.js';
import type { ReportFault } from './types.js';
import { MINUTE, type Link, type Plan } from './plan-types.js';
import { say } from './say.js';
import { endOf, isAllPlaced, startOf, type Job } from './work.js';

/** Checks that nothing begins before its predecessors have begun or finished, cured where they must, and the gap has passed. */
export function checkOrder(plan: Plan, jobs: ReadonlyMap<string, Job>, report: ReportFault): void {
  for (const job of jobs.values()) {
    if (job.pieces.length === 0) continue;
    for (const link of job.activity.after) {
      const before = jobs.get(link.activity);
      if (before && before.left > 0) checkLink(plan, job, before, link, report);
    }
  }
}

function checkLink(plan: Plan, job: Job, before: Job, link: Link, report: ReportFault): void {
  const { id } = job.activity;
  const by = startOf(job) - link.gapMinutes * MINUTE;
  const begun = link.from === 'start';
  const free = begun
    ? before.pieces.length > 0 && startOf(before) <= by
    : isAllPlaced(before) && endOf(before) <= by;
  if (!free)
    report({
      code: 'link',
      activity: id,
      text: say('begins-before-link', {
        activity: id,
        from: link.from,
        other: link.activity,
        minutes: link.gapMinutes,
      }),
    });
  if (!link.cured || before.pieces.length === 0) return;
  const why = whyNotCured(plan.curing, endOf(before), by);
  if (why !== undefined)
    report({
      code: 'not-cured',
      activity: id,
      text: say('begins-before-cured', { activity: id, pour: link.activity, why }),
    });
}
