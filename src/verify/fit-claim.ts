// Checks the claim that a package fits a window: that all of it is placed there, by every rule and in time, and that
// the claimed usable time is left after it.
import { bondsIn } from './line-state.js';
import type { PlacedWork, PlanFault, ReportFault } from './types.js';
import { Ledgers, type Needs } from './usable.js';
import { verify } from './verify.js';
import { MINUTE, type AccessWindow, type Activity, type Plan } from './plan-types.js';
import { say } from './say.js';
import { endOf, isAllPlaced, jobsOf, type Job } from './work.js';

/** The claim that a package fits a window by itself. */
export interface ClaimedFit {
  readonly package: string;
  readonly window: string;
  readonly placements: readonly PlacedWork[];
  /** Usable minutes left after the work: the fewest over its inside activities. */
  readonly spareMinutes: number | null;
}

/** Checks fits of one plan; all checks share its ledgers. */
export class FitCheck {
  readonly #plan: Plan;
  readonly #ledgers: Ledgers;
  readonly #windows: ReadonlyMap<string, AccessWindow>;
  readonly #rows: ReadonlyMap<string, Activity>;
  /** Per package, the activities that must be placed for it to fit: its own and those that make it good. */
  readonly #wanted = new Map<string, readonly string[]>();

  constructor(plan: Plan) {
    this.#plan = plan;
    this.#ledgers = new Ledgers(plan);
    this.#windows = new Map(plan.windows.map((window) => [window.id, window]));
    this.#rows = new Map(plan.activities.map((row) => [row.id, row]));
    const { jobs } = jobsOf(plan, []);
    const bonds = bondsIn(jobs);
    for (const { activity, left } of jobs.values()) {
      if (left === 0) continue;
      const known = this.#wanted.get(activity.package) ?? [];
      this.#wanted.set(activity.package, [...known, activity.id, ...bonds(activity.id)]);
    }
  }

  /** All faults of a claimed fit: rules it breaks and claims that are too large. Empty when it holds. */
  faultsOf(claim: ClaimedFit): PlanFault[] {
    const faults: PlanFault[] = [];
    const report: ReportFault = (fault) => void faults.push(fault);
    const window = this.#windows.get(claim.window);
    if (!window)
      return [{ code: 'unknown-window', text: say('no-such-window', { window: claim.window }) }];
    const ids = new Set(this.#wanted.get(claim.package));
    for (const { activity } of claim.placements) if (this.#rows.has(activity)) ids.add(activity);
    const alone: Plan = {
      ...this.#plan,
      windows: [window],
      activities: [...ids].map((id) => this.#rows.get(id)!),
    };
    faults.push(...verify(alone, { placements: claim.placements }, this.#ledgers));
    const { jobs } = jobsOf(alone, claim.placements);
    if (ids.size === 0)
      report({
        code: 'nothing-placed',
        text: say('nothing-of-package-left', { package: claim.package }),
      });
    for (const job of jobs.values()) checkDone(job, report);
    const left = this.#leftAfter(window, jobs);
    if (left !== claim.spareMinutes)
      report({
        code: 'spare',
        package: claim.package,
        text: say('minutes-left-stated', {
          stated: claim.spareMinutes,
          window: claim.window,
          package: claim.package,
          left,
        }),
      });
    return faults;
  }

  /** The fault of the claim that what once fitted fits no more, where it still breaks no rule as it was placed. */
  faultsOfLost(before: ClaimedFit): PlanFault[] {
    if (this.faultsOf(before).some(({ code }) => code !== 'spare')) return [];
    const { package: pack, window } = before;
    return [
      { code: 'still-fits', package: pack, text: say('still-fits', { package: pack, window }) },
    ];
  }

  /**
   * Fewest usable minutes left after any inside activity, for its needs; without inside activities, all usable minutes
   * of ordinary work.
   */
  #leftAfter(window: AccessWindow, jobs: ReadonlyMap<string, Job>): number {
    const inside = [...jobs.values()].filter(({ activity }) => activity.place === 'inside');
    if (inside.length === 0) {
      const ordinary: Needs = { isolation: [], loud: false };
      return this.#minutesAfter(window, ordinary, Number.NEGATIVE_INFINITY);
    }
    return Math.min(...inside.map((job) => this.#minutesAfter(window, job.activity, endOf(job))));
  }

  #minutesAfter(window: AccessWindow, work: Needs, after: number): number {
    let minutes = 0;
    for (const { start, end } of this.#ledgers.of(window, work).usable) {
      // Work begins and ends at whole minutes, so part of a minute at an edge is no use.
      const from = Math.ceil(Math.max(start, after) / MINUTE);
      minutes += Math.max(0, Math.floor(end / MINUTE) - from);
    }
    return minutes;
  }
}

/** Checks that an activity is placed in full and by its key date. */
function checkDone(job: Job, report: ReportFault): void {
  const { id, keyDate } = job.activity;
  if (!isAllPlaced(job))
    report({ code: 'left-out', activity: id, text: say('not-all-placed', { activity: id }) });
  else if (keyDate !== undefined && endOf(job) > keyDate)
    report({ code: 'late', activity: id, text: say('finished-after-key-date', { activity: id }) });
}
