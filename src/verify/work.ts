import type { PlacedWork } from './types.js';
import type { Activity, Plan } from './plan-types.js';

/** An activity and its placed pieces. */
export interface Job {
  readonly activity: Activity;
  /** Units still to be done; 1 for whole work. */
  readonly left: number;
  /** Units placed. */
  readonly placed: number;
  /** Sorted by start, then end. */
  readonly pieces: readonly PlacedWork[];
}

export function isAllPlaced(job: Job): boolean {
  return job.placed >= job.left;
}

/** Start of the first piece; requires at least one. */
export function startOf(job: Job): number {
  return job.pieces[0]!.from;
}

/** End of the last piece; -Infinity when there is none. */
export function endOf(job: Job): number {
  let end = Number.NEGATIVE_INFINITY;
  for (const piece of job.pieces) end = Math.max(end, piece.to);
  return end;
}

/** The jobs of a plan's activities, in plan order, and placements of unknown activities. */
export function jobsOf(
  plan: Plan,
  placements: readonly PlacedWork[],
): { readonly jobs: ReadonlyMap<string, Job>; readonly unknownPieces: readonly PlacedWork[] } {
  const pieces = new Map<string, PlacedWork[]>(plan.activities.map(({ id }) => [id, []]));
  const unknownPieces: PlacedWork[] = [];
  for (const piece of placements) (pieces.get(piece.activity) ?? unknownPieces).push(piece);
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
  return { jobs, unknownPieces };
}
