import type { Interval } from '../../calendar/index.js';
import {
  Board,
  mostFree,
  shiftReason,
  visitMinutes,
  type Problem,
  type Reason,
  type Task,
  type Visit,
} from '../fit/index.js';
import type { AccessWindow, Plan } from '../../model/index.js';
import { neverCodes, type NeverCode } from '../problem/eligibility.js';
import { neverWords } from '../problem/never-words.js';
import { BlockMisses } from './block-miss.js';
import { NearMisses, type NearMiss } from './near-miss.js';
import type { Unplaced } from './types.js';
import { fewestUnplacedCauses, smallestFirst } from './unplaced-causes.js';
import { sayUnplaced } from './unplaced-sentences.js';

/** What is not all placed, each with every need that no window meets and the shortest extension that would help. */
export function unplacedOf(plan: Plan, problem: Problem, visits: readonly Visit[]): Unplaced[] {
  if (problem.effort.endedTooSoon) return unplacedUnread(problem, visits);
  const board = new Board(problem);
  const settled = new Set(problem.pinned);
  for (const visit of visits) if (!settled.has(visit)) board.put(visit);
  const misses = new NearMisses(plan, problem, board);
  const blocks = new BlockMisses(plan, problem, board);
  return problem.tasks.flatMap((task) =>
    board.left[task.index]! > 0
      ? [
          {
            activity: task.activity.id,
            reasons: [
              ...blocks.of(task),
              // What keeps a block out is its own length, not other work beside its first piece.
              ...reasonsFor(plan, problem, board, task, misses).filter(
                ({ code }) => code !== 'no-room' || blocks.of(task).length === 0,
              ),
              ...shiftReason(plan, task),
            ],
          },
        ]
      : [],
  );
}

/** What is not all placed by a search that was ended before its first plan was whole. */
function unplacedUnread({ tasks }: Problem, visits: readonly Visit[]): Unplaced[] {
  const placed = tasks.map(() => 0);
  for (const { task, units } of visits) placed[task]! += units;
  const code = 'stopped-too-soon';
  return tasks.flatMap((task) =>
    placed[task.index]! < task.units
      ? [{ activity: task.activity.id, reasons: [{ code, ...sayUnplaced(code, {}) }] }]
      : [],
  );
}

function reasonsFor(
  plan: Plan,
  problem: Problem,
  board: Board,
  task: Task,
  misses: NearMisses,
): Reason[] {
  const { activity } = task;
  const left = board.left[task.index]!;
  const part: Reason[] =
    left < task.units
      ? [{ code: 'part-placed', ...sayUnplaced('part-placed', { left, of: task.units }) }]
      : [];
  if (task.latestEnd !== undefined || task.latestStart !== undefined)
    part.push({ code: 'needed-before', ...sayUnplaced('no-room-before', {}) });
  if (task.rank < 0)
    return [
      { code: 'waits-for-itself', ...sayUnplaced('waits-for-itself', { activity: activity.id }) },
    ];
  const missing = task.before.filter((tie) =>
    tie.fromStart ? !Number.isFinite(board.starts[tie.task]!) : board.left[tie.task]! > 0,
  );
  const waits = missing.map((tie): Reason => ({
    code: 'waits-for',
    ...sayUnplaced('waits-for', { activity: problem.tasks[tie.task]!.activity.id }),
  }));
  const needs = [...part, ...(task.outside ? [] : windowReasons(plan, task)), ...waits];
  needs.push(...supplyReasons(problem, task));
  if (missing.length > 0 || task.slots.length === 0) {
    if (needs.length > part.length) return needs;
    return [
      ...needs,
      { code: 'no-usable-time', ...sayUnplaced('no-usable-time', { activity: activity.id }) },
    ];
  }
  const uncured = task.before.filter(
    (tie) => tie.cure && !Number.isFinite(tie.cure.readyAt(board.ends[tie.task]!)),
  );
  if (uncured.length > 0)
    return [
      ...needs,
      ...uncured.map((tie): Reason => ({
        code: 'curing-not-known',
        ...sayUnplaced('waits-to-cure', { pour: problem.tasks[tie.task]!.activity.id }),
      })),
    ];
  // A plan that was given may leave out what would go: nothing is short then.
  const room = task.block === undefined ? board.find(task, 1) : undefined;
  if (room && needs.length === part.length) return [...part, roomLeft(task, room, problem)];
  const minutes = visitMinutes(task, 1);
  const longest = Math.max(...task.slots.map((slot) => slot.end - slot.start));
  if (longest < minutes)
    needs.push({
      code: 'no-usable-stretch',
      ...sayUnplaced('longest-stretch', { needed: minutes, longest }),
    });
  const extension = task.outside ? undefined : misses.of(task, guessesOf(problem, board, task));
  if (extension)
    needs.push({
      code: 'too-short',
      ...sayUnplaced('later-end', {
        window: problem.windows[extension.window]!.id,
        minutes: extension.by,
      }),
      shortByMinutes: extension.by,
    });
  if (needs.length === part.length) needs.push({ code: 'no-room', ...sayUnplaced('no-room', {}) });
  return smallestFirst(fewestUnplacedCauses(problem, board, task), needs);
}

/** What the plan leaves out though there is room for it. */
function roomLeft({ activity }: Task, { window }: Visit, { windows }: Problem): Reason {
  const where = window < 0 ? null : windows[window]!.id;
  return {
    code: 'room-left',
    ...sayUnplaced('room-left', { activities: [activity.id], window: where }),
  };
}

/** Causes that hold in every window of the plan: told once, in the words of the first window. */
function windowReasons(plan: Plan, task: Task): Reason[] {
  if (plan.windows.length === 0) return [{ code: 'no-window', ...sayUnplaced('no-window', {}) }];
  const found = new Map<NeverCode, { readonly first: AccessWindow; count: number }>();
  for (const window of plan.windows) {
    const codes = neverCodes(window, task.activity);
    if (codes.length === 0) return [];
    for (const code of codes) {
      const known = found.get(code);
      if (known) known.count += 1;
      else found.set(code, { first: window, count: 1 });
    }
  }
  return [...found].map(([code, { first, count }]) => ({
    code,
    ...neverWords(code, first, task.activity, [task.activity.id], count - 1),
  }));
}

function supplyReasons(problem: Problem, task: Task): Reason[] {
  return task.demands.flatMap(({ supply, amount }) => {
    const { id, profile } = problem.supplies[supply]!;
    const most = Math.max(0, ...task.slots.map((slot) => mostFree(profile, slot.start, slot.end)));
    if (most >= amount || task.slots.length === 0) return [];
    return [
      {
        code: most === 0 ? 'resource-not-there' : 'resource-short',
        ...sayUnplaced('needs-of-resource', { amount, resource: id, most }),
        resources: [id],
      },
    ];
  });
}

/** The fewest minutes by which each window's end might have to move for the rest of a task, the fewest first. */
function guessesOf(problem: Problem, board: Board, task: Task): NearMiss[] {
  const release = board.release(task);
  const minutes = visitMinutes(task, board.left[task.index]!);
  const guesses: NearMiss[] = [];
  problem.windows.forEach((_, window) => {
    const last = task.slots.filter((slot) => slot.window === window).at(-1);
    if (!last) return;
    let start = Math.max(last.start, release);
    if (start > last.end) start = Math.max(start, last.end);
    for (const visit of board.visits)
      if (sharesFully(problem, task, visit) && overlapsTail(visit, { start, end: last.end }))
        start = Math.max(start, visit.end);
    const by = start + minutes - last.end;
    if (by > 0) guesses.push({ window, by });
  });
  return guesses.sort((a, b) => a.by - b.by || a.window - b.window);
}

function overlapsTail(visit: Visit, tail: Interval): boolean {
  return visit.end > tail.start && visit.start < tail.end;
}

/** Whether a visit holds so much of a resource that the task cannot go on beside it. */
function sharesFully(problem: Problem, task: Task, visit: Visit): boolean {
  const other = problem.tasks[visit.task]!;
  return task.demands.some(({ supply, amount }) => {
    const held = other.demands.find((need) => need.supply === supply)?.amount ?? 0;
    const there = mostFree(problem.supplies[supply]!.profile, visit.start, visit.end);
    return held > 0 && held + amount > there;
  });
}
