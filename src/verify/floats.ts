import { whyNotCured } from './curing.js';
import { endOf, isAllPlaced, startOf, type Job } from './work.js';
import type { Spare } from './spare.js';
import type { ClaimedFloat, PlacedWork, ReportFault } from './types.js';
import { stopsOf, type Ledgers } from './usable.js';
import { uncovered } from './bands.js';
import { startOfPlan } from './certificate.js';
import { MINUTE, type Instant, type Phrase, type Plan, type Stretch } from './plan-types.js';
import { say } from './say.js';

interface PlacedPlan {
  readonly plan: Plan;
  readonly jobs: ReadonlyMap<string, Job>;
  readonly ledgers: Ledgers;
  readonly spare: Spare;
}

/**
 * Checks floats by delaying activities. Delayed by its free float, an activity must move nothing else. Delayed by its
 * total float, it must stay in the usable time of its window and before its key date, and its followers must still be
 * able to start at their latest start.
 */
export function checkFloats(
  placed: PlacedPlan,
  claimed: readonly ClaimedFloat[],
  report: ReportFault,
): void {
  const claims = new Map<string, ClaimedFloat>();
  for (const claim of claimed) {
    const { activity } = claim;
    if (claims.has(activity) || !placed.jobs.get(activity)?.pieces.length)
      report({
        code: 'float',
        activity,
        text: say('float-stated-twice', { activity }),
      });
    claims.set(activity, claim);
  }
  const finish = Math.max(startOfPlan(placed.plan), ...[...placed.jobs.values()].map(endOf));
  const followers = followersOf(placed.jobs);
  for (const job of placed.jobs.values()) {
    const { id } = job.activity;
    if (job.pieces.length === 0) continue;
    const claim = claims.get(id);
    const why = claim
      ? wrongIn(claim, job, placed, finish, followers.get(id) ?? [], claims)
      : say('float-missing');
    if (why !== undefined)
      report({ code: 'float', activity: id, text: say('float-of', { activity: id, why }) });
  }
}

interface Follower {
  readonly job: Job;
  readonly from: 'finish' | 'start';
  readonly gap: number;
  readonly cured: boolean;
}

function followersOf(jobs: ReadonlyMap<string, Job>): ReadonlyMap<string, readonly Follower[]> {
  const found = new Map<string, Follower[]>();
  for (const job of jobs.values()) {
    if (job.pieces.length === 0) continue;
    for (const { activity, from, gapMinutes, cured } of job.activity.after) {
      const own: Follower = { job, from, gap: gapMinutes * MINUTE, cured: cured === true };
      const known = found.get(activity);
      if (known) known.push(own);
      else found.set(activity, [own]);
    }
  }
  return found;
}

function wrongIn(
  claim: ClaimedFloat,
  job: Job,
  placed: PlacedPlan,
  finish: Instant,
  followers: readonly Follower[],
  claims: ReadonlyMap<string, ClaimedFloat>,
): Phrase | undefined {
  const { totalFloatMinutes: total, freeFloatMinutes: free } = claim;
  const last = job.pieces.at(-1)!;
  const length = last.to - last.from;
  if (claim.earliestStart !== startOf(job) || claim.earliestFinish !== last.to)
    return say('float-from-elsewhere');
  if (free < 0 || total < free) return say('float-below-free');
  if (claim.critical !== (total === 0)) return say('float-not-critical');
  const open = openTo(job, last, placed, claim.latestFinish);
  const isCut = last.window !== null && open.length > 1;
  const inOne = open.some(
    (stretch) => stretch.start <= last.from && claim.latestFinish <= stretch.end,
  );
  const isClock = claim.floatIs === 'clock';
  if (isClock ? isCut && !inOne : !isCut) return say('float-wrong-minutes');
  const counted = (until: Instant): number =>
    isCut ? lengthIn(open, last.to, until) : Math.max(0, until - last.to);
  if (counted(claim.latestFinish) !== total * MINUTE) return say('float-not-to-latest');
  if (job.pieces.length === 1 && claim.latestFinish - claim.latestStart !== length)
    return say('float-not-its-length');
  if (claim.latestStart < claim.earliestStart || claim.latestFinish < last.to)
    return say('float-back-in-time');

  const slips = (to: Instant, startFollows: Instant, latest: boolean): Phrase | undefined => {
    if (to === last.to) return undefined;
    const within = open.some((stretch) => stretch.start <= to - length && to <= stretch.end);
    if (!within) return say('float-leaves-usable');
    if (last.window === null && to > finish) return say('float-past-end');
    const { keyDate } = job.activity;
    if (keyDate !== undefined && to > keyDate) return say('float-past-key-date');
    for (const { job: next, from, gap, cured } of followers) {
      const starts = latest ? claims.get(next.activity.id)?.latestStart : startOf(next);
      if (starts === undefined) continue;
      if (from === 'start') {
        if (startFollows + gap > starts) return say('float-moves', { other: next.activity.id });
      } else if (isAllPlaced(job)) {
        if (to + gap > starts) return say('float-moves', { other: next.activity.id });
        if (cured && whyNotCured(placed.plan.curing, to, starts - gap) !== undefined)
          return say('float-moves-for-curing', { other: next.activity.id });
      }
    }
    return undefined;
  };
  const whole = slips(claim.latestFinish, claim.latestStart, true);
  if (whole !== undefined) return whole;
  const alone = isCut ? reachIn(open, last.to, free * MINUTE) : last.to + free * MINUTE;
  const moved = job.pieces.length === 1 ? alone - length : startOf(job);
  const part = slips(alone, moved, false);
  if (part !== undefined) return say('free-of-others', { why: part });
  if (alone > last.to && !placed.spare.takes(job.activity, last, alone - last.to))
    return say('free-of-others', { why: say('float-takes-from-others') });
  return undefined;
}

/** The time around a piece that its work can use. */
function openTo(
  job: Job,
  piece: PlacedWork,
  placed: PlacedPlan,
  latest: Instant,
): readonly Stretch[] {
  const { plan, ledgers } = placed;
  if (piece.window !== null) {
    const window = plan.windows.find((item) => item.id === piece.window);
    return window ? ledgers.of(window, job.activity).usable : [];
  }
  const span = { start: piece.from, end: Math.max(piece.to, latest) + MINUTE };
  return uncovered(span, stopsOf(plan, job.activity, span, plan.zone));
}

function lengthIn(open: readonly Stretch[], from: Instant, to: Instant): number {
  let sum = 0;
  for (const { start, end } of open) sum += Math.max(0, Math.min(end, to) - Math.max(start, from));
  return sum;
}

/** The moment at which `length` of the open time after `from` has passed. */
function reachIn(open: readonly Stretch[], from: Instant, length: number): Instant {
  let left = length;
  for (const { start, end } of open) {
    const begin = Math.max(start, from);
    if (end <= begin) continue;
    if (left === 0) break;
    if (end - begin >= left) return begin + left;
    left -= end - begin;
  }
  return from;
}
