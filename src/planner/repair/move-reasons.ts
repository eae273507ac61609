import type { AccessWindow, Plan, Worded } from '../../model/index.js';
import { Board, decide, type Problem } from '../fit/index.js';
import { neverCode } from '../problem/eligibility.js';
import { neverWords } from '../problem/never-words.js';
import { partOf } from '../search/parts.js';
import { sayRepair } from './repair-sentences.js';
import { heldTo, type Split } from './pieces.js';

/** Places looked at to see whether one thing less would let a piece stay. */
const STEPS = 1500;

/** Why each piece that moves does, by index of the piece. */
export function reasonsOf(
  plan: Plan,
  whole: Split,
  gone: ReadonlySet<number>,
): ReadonlyMap<number, Worded> {
  // What is placed already can be done at its very time alone, so it need not be told apart here.
  const { pinned: _, ...problem } = whole.problem;
  const split: Split = { ...whole, problem };
  const windows = new Map(plan.windows.map((window) => [window.id, window]));
  const reasons = new Map<number, Worded>();
  for (const piece of gone) {
    const own = causeByItself(split, piece, windows);
    if (own !== undefined) reasons.set(piece, own);
  }
  // What moves for a cause of its own first: other work goes with it.
  for (const piece of gone)
    if (!reasons.has(piece)) reasons.set(piece, causeBeside(split, piece, gone));
  return reasons;
}

/** Why a piece could not stay whatever else is done; undefined where it could. */
function causeByItself(
  { problem, pieces }: Split,
  piece: number,
  windows: ReadonlyMap<string, AccessWindow>,
): Worded | undefined {
  const { placement, task: index, window: at } = pieces[piece]!;
  const task = problem.tasks[index]!;
  if (placement.window === null) return sayRepair('no-time-left-for-it', {});
  const window = windows.get(placement.window);
  if (!window) return sayRepair('window-gone', { window: placement.window });
  const there = { window: window.id };
  if (window.status === 'withdrawn') return sayRepair('window-now-withdrawn', there);
  const never = neverCode(window, task.activity);
  if (never) return neverWords(never, window, task.activity);
  if (at === undefined) return sayRepair('window-takes-none', there);
  const alone = new Board(problem).find(task, task.units, task.earliest, at);
  if (!alone) return sayRepair('window-lacks-time', there);
  return alone.end > task.due ? sayRepair('too-late-there', there) : undefined;
}

/** Why a piece that could stay by itself moves with, or for, other work. */
function causeBeside(split: Split, piece: number, gone: ReadonlySet<number>): Worded {
  const { problem, pieces } = split;
  const { task: index, window, placement } = pieces[piece]!;
  const task = problem.tasks[index]!;
  const nameOf = (other: number): string => problem.tasks[other]!.activity.id;
  const mates = [...gone].map((other) => pieces[other]!.task).filter((other) => other !== index);
  const mate = mates.find(
    (other) => task.block !== undefined && problem.tasks[other]!.block === task.block,
  );
  if (mate !== undefined) return sayRepair('made-good-with', { name: nameOf(mate) });

  const beside = pieces.flatMap((other, at) =>
    other.window === window && !gone.has(at) ? [other.task] : [],
  );
  const held = heldTo(split, new Set([...gone].filter((other) => other !== piece)));
  const here = (without?: number, from = held): boolean => {
    const some = partOf(
      from,
      [index, ...beside].sort((a, b) => a - b),
      noEarlier(held),
    );
    return (
      decide(without === undefined ? some : lacking(some, task.activity.id, without), STEPS)
        .visits !== undefined
    );
  };
  if (here()) {
    const before = task.before.find((tie) => mates.includes(tie.task));
    if (before) return sayRepair('waits-for-mover', { name: nameOf(before.task) });
    const after = task.after.find((tie) => mates.includes(tie.task));
    if (after) return sayRepair('mover-waits-for-it', { name: nameOf(after.task) });
    return sayRepair('moves-with-others', {});
  }
  for (const { supply } of task.demands) {
    const others = beside.filter((other) =>
      problem.tasks[other]!.demands.some((demand) => demand.supply === supply),
    );
    if (others.length === 0 || !here(supply)) continue;
    const names = [...new Set(others.map(nameOf))];
    const { id, sole } = problem.supplies[supply]!;
    return sole
      ? sayRepair('place-taken-by', { names })
      : sayRepair('shared-with', { resource: id, names });
  }
  const late = here(undefined, undated(held)) ? 'too-late-there' : 'lacks-time-for-all';
  return sayRepair(late, { window: placement.window });
}

/** The problem in which nothing is ever late. */
const undated = (problem: Problem): Problem => ({
  ...problem,
  tasks: problem.tasks.map((task) => ({ ...task, due: Number.POSITIVE_INFINITY })),
});

const noEarlier = ({ tasks }: Problem): number[] => tasks.map(() => Number.NEGATIVE_INFINITY);

/** The problem in which one activity needs nothing of a supply. */
function lacking(problem: Problem, activity: string, supply: number): Problem {
  return {
    ...problem,
    tasks: problem.tasks.map((task) =>
      task.activity.id === activity
        ? { ...task, demands: task.demands.filter((demand) => demand.supply !== supply) }
        : task,
    ),
  };
}
