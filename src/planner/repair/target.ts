// What a repair is held to: the dates that the plan before kept, the order in which its work was, and what moves by itself.
import { Board, headsOf, type Problem, type Slot, type Task, type Visit } from '../fit/index.js';
import { easedTo, type Piece, type Split } from './pieces.js';

/** A list that places the work in the order in which it was, new work by its date. */
export function weightsOf({ problem, pieces }: Split): number[] {
  const weights = problem.tasks.map((task) => Math.min(1e9, task.due));
  for (const { task, placement } of pieces)
    weights[task] = (placement.from - problem.base) / 60_000;
  return weights;
}

/** The date of each due that the plan before kept, or by as much as it was late; its own where it is new. */
export function agreedDates({ problem, pieces }: Split): number[] {
  const ends = new Map<number, number>();
  for (const { task, placement } of pieces) ends.set(task, (placement.to - problem.base) / 60_000);
  return problem.dues.map(({ due, tasks }) =>
    tasks.reduce((last, task) => Math.max(last, ends.get(task) ?? due), due),
  );
}

export function redated(problem: Problem, dates: readonly number[]): Problem {
  return { ...problem, dues: problem.dues.map((due, i) => ({ ...due, due: dates[i]! })) };
}

/** The split with each task held to the earliest of the dates it must keep. */
export function withDates(split: Split, dates: readonly number[]): Split {
  const { problem } = split;
  const by = problem.tasks.map(() => Number.POSITIVE_INFINITY);
  problem.dues.forEach(({ tasks }, i) => {
    for (const task of tasks) by[task] = Math.min(by[task]!, dates[i]!);
  });
  return {
    ...split,
    problem: { ...problem, tasks: problem.tasks.map((task, i) => ({ ...task, due: by[i]! })) },
  };
}

/** Pieces that cannot stay in their window even by themselves. */
export function forcedOf(split: Split): number[] {
  const { problem, pieces } = split;
  const all = new Set(pieces.keys());
  const { starts } = headsOf(new Board(easedTo(split, all)));
  const board = new Board(problem);
  const settled = new Set(problem.pinned?.map((visit) => visit.task));
  return pieces.flatMap(({ task: index, window }, at) => {
    if (window === -1 || settled.has(index)) return [];
    const task = problem.tasks[index]!;
    if (window === undefined || !Number.isFinite(starts[index]!)) return [at];
    const mark = board.visits.length;
    const earliest = Math.max(task.earliest, starts[index]!);
    board.place({ ...task, earliest, before: [] }, task.units, window);
    const stays = board.left[index] === 0 && board.ends[index]! <= task.due;
    while (board.visits.length > mark) board.takeBack();
    return stays ? [] : [at];
  });
}

/** Pieces of which less is in their window than was, by index. */
export function movedBy({ pieces, whole }: Split, visits: readonly Visit[]): Set<number> {
  const units = new Map<string, number>();
  const key = (task: number, window: number): string => `${task} ${window}`;
  for (const { task, window, units: some } of visits) {
    const at = key(whole[task]!, window);
    units.set(at, (units.get(at) ?? 0) + some);
  }
  const gone = new Set<number>();
  const wanted = ({ placement }: Piece): number => placement.units ?? 1;
  // The smallest first, so that as many stay as there is room for.
  const order = [...pieces.entries()].sort((a, b) => wanted(a[1]) - wanted(b[1]) || a[0] - b[0]);
  for (const [at, piece] of order) {
    const where = piece.window === undefined ? '' : key(whole[piece.task]!, piece.window);
    const there = units.get(where) ?? 0;
    if (there < wanted(piece)) gone.add(at);
    else units.set(where, there - wanted(piece));
  }
  return new Set([...gone].sort((a, b) => a - b));
}

/** The dates by which a plan is done, none earlier than some. */
export function datesReached(
  { problem }: Split,
  visits: readonly Visit[],
  atLeast: readonly number[],
): number[] {
  const ends = problem.tasks.map(() => Number.NEGATIVE_INFINITY);
  for (const visit of visits) ends[visit.task] = Math.max(ends[visit.task]!, visit.end);
  return problem.dues.map(({ tasks }, i) =>
    tasks.reduce((last, task) => Math.max(last, ends[task]!), atLeast[i]!),
  );
}

/** What a plan leaves unplaced need not be placed, and how late it is may be so late. */
export function reached(split: Split, visits: readonly Visit[], atLeast: readonly number[]): Split {
  const left = split.problem.tasks.map((task) => task.units);
  for (const visit of visits) left[visit.task]! -= visit.units;
  const lost = new Set(left.flatMap((units, index) => (units > 0 ? [index] : [])));
  return without(split, lost, datesReached(split, visits, atLeast));
}

/** Work that has no place in any plan, and what waits for it or holds together with it. */
export function hopelessIn(split: Split): ReadonlySet<number> {
  const { problem } = split;
  const { ends } = headsOf(new Board(easedTo(split, new Set(split.pieces.keys()))));
  const lost = new Set<number>();
  const lose = (index: number): void => {
    if (lost.has(index)) return;
    lost.add(index);
    for (const tie of problem.tasks[index]!.after) lose(tie.task);
    const { block } = problem.tasks[index]!;
    if (block === undefined) return;
    const { members, runners } = problem.blocks![block]!;
    for (const mate of [...members, ...runners]) lose(mate);
  };
  ends.forEach((end, index) => {
    if (end === Number.POSITIVE_INFINITY) lose(index);
  });
  return lost;
}

/** The split in which some work need not be placed, and the rest has some dates. */
export function without(split: Split, lost: ReadonlySet<number>, dates: readonly number[]): Split {
  const { problem } = split;
  const isLost = (index: number): boolean => lost.has(index);
  const some = withDates(split, dates);
  if (lost.size === 0) return some;
  const blocks = problem.blocks?.map((block) =>
    [...block.members, ...block.runners].some(isLost) ? { members: [], runners: [] } : block,
  );
  return {
    ...some,
    pieces: some.pieces.map((piece): Piece =>
      isLost(piece.task) ? { ...piece, window: undefined } : piece,
    ),
    problem: {
      ...some.problem,
      ...(blocks && { blocks, clusters: [] }),
      // What is lost takes no time and no plant, so that it is in nobody's way.
      tasks: some.problem.tasks.map((task): Task => {
        if (!isLost(task.index)) return task;
        const { block: _, lastOnly: __, ...free } = task;
        return {
          ...free,
          ...{ perUnit: 0, setUp: 0, makeSafe: 0, demands: [], slots: anywhere },
          ...{ due: Number.POSITIVE_INFINITY, before: [], earliest: Number.NEGATIVE_INFINITY },
        };
      }),
    },
  };
}

/** The time of work that is left out: it is in nobody's way. */
export const anywhere: readonly Slot[] = [{ window: -1, start: -1e9, end: 1e9 }];
