import type { PlacedWork } from './types.js';
import type { Activity, Plan } from './words.js';

/** An activity with what is placed of it. */
export interface Job {
  readonly activity: Activity;
  /** Units still to be done; 1 for a whole piece of work. */
  readonly left: number;
  /** Units placed. */
  readonly placed: number;
  /** By start, then end. */
  readonly pieces: readonly PlacedWork[];
}

export function isAllPlaced(job: Job): boolean {
  return job.placed >= job.left;
}

/** When the first piece begins; only where there is one. */
export function startOf(job: Job): number {
  return job.pieces[0]!.from;
}

/** When the last piece ends; minus infinity where there is none. */
export function endOf(job: Job): number {
  let end = Number.NEGATIVE_INFINITY;
  for (const piece of job.pieces) end = Math.max(end, piece.to);
  return end;
}

/** The activities of a plan in its order, and what is placed of none of them. */
export function jobsOf(
  plan: Plan,
  placements: readonly PlacedWork[],
): { readonly jobs: ReadonlyMap<string, Job>; readonly strangers: readonly PlacedWork[] } {
  const pieces = new Map<string, PlacedWork[]>(plan.activities.map(({ id }) => [id, []]));
  const strangers: PlacedWork[] = [];
  for (const piece of placements) (pieces.get(piece.activity) ?? strangers).push(piece);
  const jobs = new Map<string, Job>();
  for (const activity of plan.activities) {
    const own = pieces.get(activity.id)!.sort((a, b) => a.from - b.from || a.to - b.to);
    const { work } = activity;
    jobs.set(activity.id, {
      activity,
      left: work.kind === 'whole' ? 1 : work.units - work.done,
      placed: own.reduce((sum, item) => sum + (work.kind === 'whole' ? 1 : (item.units ?? 0)), 0),
      pieces: own,
    });
  }
  return { jobs, strangers };
}
