// Checks that the line is fit to run at every handback: what was opened is made good in the same window. Walks the
// links itself, from each activity that names what makes it good.
import type { ReportFault } from './types.js';
import type { Activity } from './plan-types.js';
import { say } from './say.js';
import { endOf, isAllPlaced, startOf, type Job } from './work.js';

type Jobs = ReadonlyMap<string, Job>;

/** The inside work that an activity names as making it good. */
function namedBy({ id, madeGoodBy, place }: Activity, jobs: Jobs): string[] {
  if (place === 'outside' || madeGoodBy === undefined || madeGoodBy === 'none') return [];
  return madeGoodBy.filter((name) => name !== id && jobs.get(name)?.activity.place === 'inside');
}

/** All activities on a chain of links from an activity to any of the targets, including the targets reached. */
function between(id: string, targets: readonly string[], jobs: Jobs): ReadonlySet<string> {
  const followers = new Map<string, string[]>();
  const behind = new Set(targets);
  for (const at of behind)
    for (const { activity } of jobs.get(at)?.activity.after ?? []) {
      const known = followers.get(activity);
      if (known) known.push(at);
      else followers.set(activity, [at]);
      behind.add(activity);
    }
  const on = new Set<string>();
  const open = [id];
  for (let at = open.pop(); at !== undefined; at = open.pop())
    for (const next of followers.get(at) ?? [])
      if (!on.has(next)) {
        on.add(next);
        open.push(next);
      }
  on.delete(id);
  return on;
}

/** All that must be finished in the same window as an activity, directly or indirectly. */
function boundTo(id: string, jobs: Jobs, direct: (id: string) => readonly string[]): string[] {
  const bound = new Set<string>();
  const open = [id];
  for (let at = open.pop(); at !== undefined; at = open.pop())
    for (const other of direct(at))
      if (!bound.has(other)) {
        bound.add(other);
        open.push(other);
      }
  bound.delete(id);
  return [...bound].filter((each) => {
    const job = jobs.get(each);
    return job?.activity.place === 'inside' && job.left > 0;
  });
}

/** What each activity is directly bound to. */
function directBonds(jobs: Jobs): (id: string) => readonly string[] {
  const known = new Map<string, readonly string[]>();
  return (id) => {
    let found = known.get(id);
    if (!found) {
      const job = jobs.get(id);
      const targets = job ? namedBy(job.activity, jobs) : [];
      found = targets.length === 0 ? [] : [...new Set([...targets, ...between(id, targets, jobs)])];
      known.set(id, found);
    }
    return found;
  };
}

/** For each activity, what has to be finished in the same window. */
export function bondsIn(jobs: Jobs): (id: string) => readonly string[] {
  const direct = directBonds(jobs);
  return (id) => (direct(id).length === 0 ? [] : boundTo(id, jobs, direct));
}

export function checkLineState(jobs: Jobs, report: ReportFault): void {
  const direct = directBonds(jobs);
  for (const job of jobs.values()) {
    const { id } = job.activity;
    // Until the last unit is placed, each stop is made safe and binds nothing.
    if (job.left === 0 && direct(id).length > 0) {
      // Already done: what makes it good must still be in one window.
      const members = boundTo(id, jobs, direct);
      const piece = members.flatMap((each) => jobs.get(each)!.pieces)[0];
      if (piece) for (const each of members) checkMember(job, piece.window, each, jobs, report);
      continue;
    }
    if (job.pieces.length === 0 || !isAllPlaced(job) || direct(id).length === 0) continue;
    const last = job.pieces.reduce((a, b) => (b.to > a.to ? b : a));
    for (const member of boundTo(id, jobs, direct))
      checkMember(job, last.window, member, jobs, report);
    const targets = namedBy(job.activity, jobs);
    const linked = between(id, targets, jobs);
    for (const target of targets) {
      const other = jobs.get(target)!;
      if (linked.has(target) || other.pieces.length === 0) continue;
      if (startOf(other) < endOf(job))
        report({
          code: 'made-good-too-soon',
          activity: target,
          text: say('made-good-too-soon', { activity: target, opened: id }),
        });
    }
  }
}

function checkMember(
  job: Job,
  window: string | null,
  member: string,
  jobs: Jobs,
  report: ReportFault,
): void {
  const { id } = job.activity;
  const other = jobs.get(member)!;
  const inPart = !isAllPlaced(other);
  if (!inPart && other.pieces.every((piece) => piece.window === window)) return;
  report({
    code: 'not-made-good',
    activity: id,
    text: say('line-not-made-good', { activity: id, window, member, inPart }),
  });
}
