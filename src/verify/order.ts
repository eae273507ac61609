import { readyBy } from './curing.js';
import type { Tell } from './types.js';
import { MINUTE, type Link, type Plan } from './words.js';
import { endOf, isAllPlaced, startOf, type Job } from './work.js';

/** Nothing begins before what it waits for has begun or finished, has cured where it must, and the gap is over. */
export function checkOrder(plan: Plan, jobs: ReadonlyMap<string, Job>, tell: Tell): void {
  for (const job of jobs.values()) {
    if (job.pieces.length === 0) continue;
    for (const link of job.activity.after) {
      const before = jobs.get(link.activity);
      if (before && before.left > 0) checkLink(plan, job, before, link, tell);
    }
  }
}

function checkLink(plan: Plan, job: Job, before: Job, link: Link, tell: Tell): void {
  const { id } = job.activity;
  const by = startOf(job) - link.gapMinutes * MINUTE;
  const begun = link.from === 'start';
  const free = begun
    ? before.pieces.length > 0 && startOf(before) <= by
    : isAllPlaced(before) && endOf(before) <= by;
  if (!free)
    tell({
      code: 'link',
      activity: id,
      text: `${id} begins before the ${link.from} of ${link.activity} and ${link.gapMinutes} minutes`,
    });
  if (!link.cured || before.pieces.length === 0) return;
  const why = readyBy(plan.curing, endOf(before), by);
  if (why !== undefined)
    tell({
      code: 'not-cured',
      activity: id,
      text: `${id} begins before ${link.activity} has cured: ${why}`,
    });
}
