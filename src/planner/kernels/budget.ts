/** How long a search may go on. All times are read from `clock`, in ms; `deadlineMs` is an instant on that clock. */
export interface Limits {
  readonly clock: () => number;
  /** The instant, on `clock`, at which the search hands back the best answer it has. */
  readonly deadlineMs: number;
  /** Asked now and then; `true` ends the search as the deadline would. */
  readonly shouldStop?: () => boolean;
}

/** Answers "is it time to stop", and once it has said yes it never says no again. */
export interface Budget {
  expired(): boolean;
  now(): number;
}

/** The budget of `limits`, cut short at `cutMs` when that comes first. */
export function createBudget(limits: Limits, cutMs = Infinity): Budget {
  const deadline = Math.min(limits.deadlineMs, cutMs);
  let over = false;
  return {
    now: limits.clock,
    expired() {
      over ||= limits.clock() >= deadline || limits.shouldStop?.() === true;
      return over;
    },
  };
}
