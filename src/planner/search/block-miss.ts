import { addMinutes, MINUTE } from '../../calendar/index.js';
import type { Activity, Plan } from '../../model/index.js';
import {
  LedgerCache,
  placementsOf,
  problemOf,
  reach,
  scheduleAlone,
  type Board,
  type Problem,
  type Reason,
  type Task,
} from '../fit/index.js';
import { blockOf } from '../problem/left-open.js';
import { afterTie } from '../problem/problem.js';
import { pin } from './pins.js';
import { sayUnplaced } from './unplaced-sentences.js';

/** Windows of which a later end is tried for one block. */
const MOST_WINDOWS = 3;
/** Blocks for which later ends are tried: each takes a few dozen small searches. */
const MOST_ASKED = 8;

/** Why blocks are not begun, with the later end that would let each in, tried by placing it beside all that is placed. */
export class BlockMisses {
  readonly #plan: Plan;
  readonly #problem: Problem;
  readonly #board: Board;
  readonly #book: LedgerCache;
  readonly #blocks = new Map<number, readonly Reason[]>();
  #asked = 0;

  constructor(plan: Plan, problem: Problem, board: Board) {
    this.#plan = plan;
    this.#problem = problem;
    this.#board = board;
    this.#book = new LedgerCache(plan);
  }

  /** Why the block that a task is part of is not begun; empty where it is in none, or waits for other work. */
  of(task: Task): readonly Reason[] {
    const at = (this.#problem.clusters ?? []).findIndex(({ tasks }) => tasks.includes(task.index));
    if (at < 0) return [];
    let known = this.#blocks.get(at);
    if (!known) this.#blocks.set(at, (known = this.#reasonsOf(at)));
    return known;
  }

  #reasonsOf(at: number): readonly Reason[] {
    const { tasks, windows, clusters } = this.#problem;
    const own = clusters!
      [at]!.tasks.map((index) => tasks[index]!)
      .filter((task) => this.#board.left[task.index]! > 0);
    const bound = own.filter((task) => task.block !== undefined);
    const waits = own.some((task) =>
      task.before.some((tie) => !own.includes(tasks[tie.task]!) && !this.#isReady(tie)),
    );
    if (waits || bound.length === 0) return [];
    const block = blockOf(own.map((task) => task.activity));
    if (this.#asked >= MOST_ASKED)
      return [
        {
          code: 'not-made-good',
          ...sayUnplaced('block-not-asked', { ...block, asked: MOST_ASKED }),
        },
      ];
    this.#asked += 1;
    const rooms = windows.map((_, window) =>
      Math.min(
        ...bound.map((task) =>
          task.slots.reduce(
            (sum, slot) => sum + (slot.window === window ? slot.end - slot.start : 0),
            0,
          ),
        ),
      ),
    );
    const open = rooms.flatMap((room, window) => (room > 0 ? [window] : []));
    if (open.length === 0)
      return [{ code: 'not-made-good', ...sayUnplaced('block-in-no-window', block) }];
    open.sort((a, b) => rooms[b]! - rooms[a]! || a - b);
    // A plan that was given may leave out what would go: nothing is short then.
    const goes = open.slice(0, MOST_WINDOWS).find((window) => this.#trial(own, window)(0));
    if (goes !== undefined) {
      return [
        {
          code: 'room-left',
          ...sayUnplaced('room-left', { activities: block.makers, window: windows[goes]!.id }),
        },
      ];
    }
    const found = this.#least(own, open);
    const best = windows[found?.window ?? open[0]!]!.id;
    const given = {
      ...block,
      window: best,
      ...(open.length > MOST_WINDOWS && { tried: { some: MOST_WINDOWS, of: open.length } }),
    };
    if (!found) return [{ code: 'not-made-good', ...sayUnplaced('block-no-end', given) }];
    return [
      {
        code: 'not-made-good',
        ...sayUnplaced('block-short', { ...given, minutes: found.by }),
        shortByMinutes: found.by,
      },
    ];
  }

  #isReady(tie: Task['before'][number]): boolean {
    return tie.fromStart
      ? Number.isFinite(this.#board.starts[tie.task]!)
      : this.#board.left[tie.task] === 0;
  }

  #least(
    tasks: readonly Task[],
    windows: readonly number[],
  ): { window: number; by: number } | undefined {
    let best: { window: number; by: number } | undefined;
    for (const window of windows.slice(0, MOST_WINDOWS)) {
      const by = this.#shortest(tasks, window, best?.by);
      if (by !== undefined && (!best || by < best.by)) best = { window, by };
    }
    return best;
  }

  /** The fewest minutes found, and tried, by which a window's end must move; `undefined` where none below `most` do. */
  #shortest(tasks: readonly Task[], window: number, most?: number): number | undefined {
    const fits = this.#trial(tasks, window);
    let high = most === undefined ? reach(tasks.map((task) => task.activity)) : most - 1;
    if (high < 1 || !fits(high)) return undefined;
    let low = 1;
    while (low < high) {
      const middle = Math.floor((low + high) / 2);
      if (fits(middle)) high = middle;
      else low = middle + 1;
    }
    return high;
  }

  /** Whether some tasks find their place in a window thought longer, beside all that is placed. */
  #trial(tasks: readonly Task[], window: number): (longerBy: number) => boolean {
    const { base, windows } = this.#problem;
    const own = windows[window]!;
    const wanted = new Set(tasks.map((task) => task.index));
    const until = (own.end - base) / MINUTE + reach(tasks.map((task) => task.activity));
    const beside = this.#board.visits.filter(
      (visit) =>
        wanted.has(visit.task) || (visit.start < until && visit.end > (own.start - base) / MINUTE),
    );
    const used = new Set([window, ...beside.map((visit) => visit.window)]);
    const others = new Set(beside.map((visit) => visit.task).filter((task) => !wanted.has(task)));
    const activities = this.#problem.tasks.flatMap((task): Activity[] => {
      if (wanted.has(task.index)) return [this.#asAsked(task, wanted, own.id)];
      if (!others.has(task.index)) return [];
      const { madeGoodBy: _, ...free } = task.activity;
      return [{ ...free, after: [] }];
    });
    const scope = {
      windows: windows.filter((_, at) => used.has(at)),
      activities,
      without: new Set(['key-date'] as const),
    };
    const kept = placementsOf(this.#problem, beside);
    return (longerBy) =>
      scheduleAlone(pin(problemOf(this.#plan, { ...scope, longerBy }, this.#book), kept)).done;
  }

  /** What is left of a task, in one window, not before what it waits for. */
  #asAsked(task: Task, wanted: ReadonlySet<number>, window: string): Activity {
    const { tasks, base } = this.#problem;
    const from = task.before.reduce((latest, tie) => {
      if (wanted.has(tie.task)) return latest;
      const at = tie.fromStart ? this.#board.starts[tie.task]! : this.#board.ends[tie.task]!;
      return Math.max(latest, afterTie(tie, at));
    }, task.earliest);
    const ids = new Set([...wanted].map((index) => tasks[index]!.activity.id));
    const { activity } = task;
    return {
      ...activity,
      after: activity.after.filter((link) => ids.has(link.activity)),
      ...(task.outside ? {} : { window }),
      ...(Number.isFinite(from) && { notBefore: addMinutes(base, from) }),
    };
  }
}
