import type { Activity } from '../../model/index.js';
import type { Skeleton } from '../problem/skeleton.js';

/**
 * How many units of each activity of a package go in: a list by task, a whole piece 0 or 1. What goes together is kept
 * together: what is waited for, and all of a block that leaves the line open in between.
 */
export class Levels {
  readonly #skeleton: Skeleton;
  readonly #lists = new Map<string, readonly Activity[]>();
  readonly #needed = new Map<string, readonly number[]>();
  /** All units that are left. */
  readonly all: readonly number[];
  /** Inside activities. */
  readonly pieces: number;
  /** Units of inside work that is repeated. */
  readonly repeatedUnits: number;

  constructor(skeleton: Skeleton) {
    this.#skeleton = skeleton;
    this.all = skeleton.work.map(({ units }) => units);
    const whole = this.count(this.all);
    this.pieces = whole.pieces;
    this.repeatedUnits = whole.units;
  }

  /** Tasks, what is waited for first. */
  get order(): readonly number[] {
    return this.#skeleton.order;
  }

  isInside(at: number): boolean {
    return this.#skeleton.activities[at]!.place === 'inside';
  }

  /** Whether no inside work goes in. */
  isNothing(some: readonly number[]): boolean {
    return some.every((units, at) => units === 0 || !this.isInside(at));
  }

  /** Inside pieces finished, and units of inside work that is repeated. */
  count(some: readonly number[]): { pieces: number; units: number } {
    let pieces = 0;
    let units = 0;
    this.#skeleton.activities.forEach(({ work, place }, at) => {
      if (place === 'outside') return;
      if (some[at] === this.all[at]) pieces += 1;
      if (work.kind === 'units') units += some[at]!;
    });
    return { pieces, units };
  }

  /** No more than `some`, and the most of it that can go in by what waits for what. */
  lowered(some: readonly number[]): number[] {
    const { order, before } = this.#skeleton;
    const now = some.map((units, at) => (order.includes(at) ? units : 0));
    for (let again = true; again;) {
      again = false;
      const lower = (at: number, to: number): void => {
        if (now[at]! <= to) return;
        now[at] = to;
        again = true;
      };
      for (const at of order) {
        if (now[at]! < this.all[at]! && !this.#mayStop(at)) lower(at, 0);
        const isHeld = before[at]!.some(
          ({ task, fromStart }) => now[task]! < (fromStart ? 1 : this.all[task]!),
        );
        if (isHeld) lower(at, 0);
      }
      this.#eachBlock((members, runners) => {
        const tasks = [...members, ...runners];
        if (tasks.every((at) => now[at] === this.all[at])) return;
        for (const at of members) lower(at, 0);
        for (const at of runners) lower(at, this.all[at]! - 1);
      });
    }
    return now;
  }

  /** What has to go in for so many units of one activity. */
  needed(task: number, units: number): readonly number[] {
    const key = `${task} ${units}`;
    let known = this.#needed.get(key);
    if (!known) this.#needed.set(key, (known = this.#raised(task, units)));
    return known;
  }

  #raised(task: number, units: number): number[] {
    const { before } = this.#skeleton;
    const now = this.all.map(() => 0);
    now[task] = units;
    for (let again = true; again;) {
      again = false;
      const raise = (at: number, to: number): void => {
        const most = this.#mayStop(at) ? to : this.all[at]!;
        if (now[at]! >= most) return;
        now[at] = most;
        again = true;
      };
      this.all.forEach((_, at) => {
        if (now[at] === 0) return;
        raise(at, now[at]!);
        for (const tie of before[at]!) raise(tie.task, tie.fromStart ? 1 : this.all[tie.task]!);
      });
      this.#eachBlock((members, runners) => {
        if (
          !members.some((at) => now[at]! > 0) &&
          !runners.some((at) => now[at]! === this.all[at]!)
        )
          return;
        for (const at of [...members, ...runners]) raise(at, this.all[at]!);
      });
    }
    return now;
  }

  /** The activities that go in, those in part with so many units. Outside work only where it is waited for. */
  activities(some: readonly number[]): readonly Activity[] {
    const wanted = this.all.map(() => 0);
    some.forEach((units, task) => {
      if (units === 0 || !this.isInside(task)) return;
      this.needed(task, units).forEach((each, at) => {
        wanted[at] = Math.max(wanted[at]!, each);
      });
    });
    const key = wanted.join();
    let list = this.#lists.get(key);
    if (!list) {
      list = this.#skeleton.activities.flatMap((activity, at) =>
        wanted[at] === 0 ? [] : [partOf(activity, wanted[at]!, this.all[at]!)],
      );
      this.#lists.set(key, list);
    }
    return list;
  }

  /** Whether an activity may be left unfinished in the window. */
  #mayStop(at: number): boolean {
    const { activities, blocks } = this.#skeleton;
    return (
      activities[at]!.work.kind === 'units' && !blocks.some(({ members }) => members.includes(at))
    );
  }

  #eachBlock(use: (members: readonly number[], runners: readonly number[]) => void): void {
    for (const { members, runners } of this.#skeleton.blocks) use(members, runners);
  }
}

/** An activity with so many units left. Its last unit is not among them, which alone would have to be made good. */
function partOf(activity: Activity, units: number, all: number): Activity {
  const { work } = activity;
  if (units === all || work.kind === 'whole') return activity;
  const { madeGoodBy: _, ...rest } = activity;
  return { ...rest, work: { ...work, done: work.units - units } };
}
