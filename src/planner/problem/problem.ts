import type { Instant } from '../../calendar/index.js';
import type { AccessWindow, Activity } from '../../model/index.js';
import type { Block, Cluster } from './blocks.js';
import type { Effort } from './effort.js';
import type { Profile } from './profile.js';

// Inside a problem every moment is whole minutes after `base`, so that arithmetic is exact and fast.

/** A stretch in which a task may be placed: usable time of one window for the task's needs. */
export interface Slot {
  /** Index into the problem's windows; -1 outside any. */
  readonly window: number;
  readonly start: number;
  readonly end: number;
}

export interface Tie {
  /** Index of the task at the other end. */
  readonly task: number;
  readonly fromStart: boolean;
  readonly gap: number;
  /** Curing that comes before the gap; absent: none. */
  readonly cure?: Cure;
}

/** When what finished has cured, and by when it must have finished to be so; infinite where that is not known. */
export interface Cure {
  readyAt(finish: number): number;
  latestFinish(readyBy: number): number;
}

/** When what waits by a tie may start, once what it waits for has started or finished. */
export function afterTie(tie: Tie, from: number): number {
  return (tie.cure && Number.isFinite(from) ? tie.cure.readyAt(from) : from) + tie.gap;
}

/** By when what is waited for by a tie must have started or finished, for what waits to start. */
export function beforeTie(tie: Tie, follower: number): number {
  const by = follower - tie.gap;
  return tie.cure && Number.isFinite(by) ? tie.cure.latestFinish(by) : by;
}

/** An activity with work left. A whole piece of work is one unit without set up or make safe. */
export interface Task {
  readonly index: number;
  readonly activity: Activity;
  readonly outside: boolean;
  readonly units: number;
  readonly perUnit: number;
  readonly setUp: number;
  readonly makeSafe: number;
  /** By start, then end. */
  readonly slots: readonly Slot[];
  /** Not before this; minus infinity when free. */
  readonly earliest: number;
  /** Finished by this; infinity when free. */
  readonly due: number;
  /** Finished by this because something that stays where it is waits for it, at first or second hand; absent: free. */
  readonly latestEnd?: number;
  /** Begun by this for the same cause; absent: free. */
  readonly latestStart?: number;
  /** Something that stays where it is leaves the line open until this is done. */
  readonly owed?: true;
  /** Index of the block it is part of; absent: none. */
  readonly block?: number;
  /** Of a block, only the window of its last unit is the block's. */
  readonly lastOnly?: true;
  readonly before: readonly Tie[];
  readonly after: readonly Tie[];
  readonly demands: readonly { readonly supply: number; readonly amount: number }[];
  /** Other visits of the same repeated work, with which it may be done in one go; absent: none. */
  readonly joins?: readonly number[];
  /** Place in an order in which all that is waited for comes first; -1 when it waits for itself. */
  readonly rank: number;
}

/** Work of one package that must have finished by one moment. */
export interface Due {
  readonly package: string;
  readonly due: number;
  readonly tasks: readonly number[];
}

/** What is there of something over time. */
export interface Supply {
  readonly id: string;
  readonly profile: Profile;
  /** It is a place that some work takes alone. */
  readonly sole?: true;
}

export interface Problem {
  readonly base: Instant;
  readonly windows: readonly AccessWindow[];
  readonly tasks: readonly Task[];
  /** What is there of each limited resource; `sole`: of a place that some work takes alone. */
  readonly supplies: readonly Supply[];
  readonly dues: readonly Due[];
  /** Task indices in an order in which all that is waited for comes first; without those that wait for themselves. */
  readonly order: readonly number[];
  /** Tasks bound to one window each; absent: none are. */
  readonly blocks?: readonly Block[];
  /** What is placed at one go because of them. */
  readonly clusters?: readonly Cluster[];
  /** Counts the work that is done on this problem and on all that are made of it. */
  readonly effort: Effort;
  /** No finish before this minute counts as sooner than it; absent: minute 0. */
  readonly finishFrom?: number;
  /** Visits that are already settled. */
  readonly pinned?: readonly Visit[];
}

/** Work done at one go. */
export interface Visit {
  readonly task: number;
  readonly window: number;
  readonly start: number;
  readonly end: number;
  readonly units: number;
}

/** Whether something that stays where it is waits for the task: left out, it would break the plan. */
export function isOwed(task: Task): boolean {
  return task.owed === true || task.latestEnd !== undefined || task.latestStart !== undefined;
}

export function visitMinutes(task: Task, units: number): number {
  return task.setUp + units * task.perUnit + task.makeSafe;
}
