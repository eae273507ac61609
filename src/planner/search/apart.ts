import {
  compareScores,
  type Problem,
  type Score,
  type Task,
  type Tie,
  type Visit,
} from '../fit/index.js';
import { boundOf } from '../bounds/bounds.js';
import { construct } from './improve.js';
import { scoreIn, type Goal } from './objectives.js';
import { search, type Found, type SearchOptions } from './search.js';

/** Part of the steps for the search of each part before it is known when the last of all finishes. */
const FIRST = 0.9;

/** Some of the tasks of a problem as a problem of their own, with their places in the whole. */
interface Part {
  readonly problem: Problem;
  readonly tasks: readonly number[];
}

/**
 * The best found for work of which parts have nothing to do with one another, each searched for by itself.
 *
 * Minutes late and windows of the parts add up, and so do their bounds; the last finish is that of one part, and no other has
 * to finish sooner than that: it may be done in fewer windows, or less late where the finish comes first.
 *
 * @param known Values that no answer beats.
 */
export function searchApart(
  whole: Problem,
  goal: Goal,
  known: Score,
  { seed, onBetter, from: given }: SearchOptions,
): Found {
  const parts = partsOf(whole);
  if (parts.length < 2)
    return search(whole, goal, known, { seed, onBetter, ...(given && { from: given }) });
  const { effort } = whole;
  const { limit } = effort;
  const finishAt = finishPlace(goal);
  const bounds = parts.map(({ problem }) => boundOf(problem, goal));
  // The part that can least finish soon goes first: it says how long the others have.
  const order = [...parts.keys()].sort((a, b) => bounds[b]![finishAt]! - bounds[a]![finishAt]!);
  // So that there is a whole plan however soon it ends.
  const found = new Map<number, Found>(
    parts.map(({ problem }, at) => {
      const bound = bounds[at]!;
      if (given) {
        const visits = ofPart(parts[at]!, given.visits);
        return [at, { visits, score: scoreIn(problem, goal, visits), bound, proven: 0 }];
      }
      const options = { goal, bound, seed, stop: () => effort.isCut() };
      return [at, { ...construct(problem, options), bound, proven: 0 }];
    }),
  );
  effort.firstPlanMade();
  const visitsNow = (part: number, visits: readonly Visit[]): Visit[] =>
    [...parts.keys()].flatMap((at) =>
      inWhole(parts[at]!, at === part ? visits : found.get(at)!.visits),
    );
  const searched = (part: number, from: number): void => {
    const held: Problem = { ...parts[part]!.problem, finishFrom: from };
    const { visits } = found.get(part)!;
    const known = { visits, score: scoreIn(held, goal, visits) };
    const answer = search(held, goal, boundOf(held, goal), {
      seed,
      onBetter: ({ visits }) => {
        const all = visitsNow(part, visits);
        onBetter({ visits: all, score: scoreIn(whole, goal, all) });
      },
      ...(given && { from: known }),
    });
    const isBetter = compareScores(answer.score, known.score) <= 0;
    found.set(part, isBetter ? answer : { ...answer, ...known });
  };
  let left = whole.tasks.length;
  let last = 0;
  const froms = new Map<number, number>();
  for (const part of order) {
    const { length } = parts[part]!.tasks;
    effort.limit = effort.spent + FIRST * (limit - effort.spent) * (length / left);
    left -= length;
    froms.set(part, last);
    searched(part, last);
    last = Math.max(last, found.get(part)!.score[finishAt]!);
  }
  effort.limit = limit;
  // What went before knew of a sooner finish only.
  const before = new Map(found);
  for (const part of order)
    if (froms.get(part)! < last && found.get(part)!.score[finishAt]! < last) searched(part, last);
  const visits = visitsNow(-1, []);
  const score = scoreIn(whole, goal, visits);
  const proofs = parts.map((_, at) => {
    const [early, final] = [before.get(at)!, found.get(at)!];
    return { early, final, from: froms.get(at)!, least: bounds[at]! };
  });
  return { visits, score, bound: boundsTogether(proofs, known, score, finishAt), proven: 0 };
}

/** What is known of one part: as searched at first, with no finish before `from` counted, and as searched in the end. */
interface PartProof {
  readonly early: Found;
  readonly final: Found;
  readonly from: number;
  /** What no plan of it beats at all. */
  readonly least: Score;
}

/**
 * What no plan of all parts beats that is as good in the values before. What was proven of a part holds for plans of it that
 * are as good as its own in the values before: that says something of the whole as long as these are proven of every part.
 */
function boundsTogether(
  proofs: readonly PartProof[],
  known: Score,
  score: Score,
  finishAt: number,
): Score {
  let settled = true;
  return known.map((value, i) => {
    if (i === finishAt) {
      const least = proofs.map(({ early, from, least: own }) => {
        const proved = provedOf(early)[i]!;
        return settled && proved > from ? Math.max(own[i]!, proved) : own[i]!;
      });
      const bound = Math.max(value, ...least);
      settled &&= bound >= score[i]!;
      return bound;
    }
    let sum = 0;
    let isProven = true;
    for (const { early, final, least } of proofs) {
      let own = least[i]!;
      if (settled) own = Math.max(own, provedOf(final)[i]!);
      // Found while less of the finish was known, it holds only of what comes before the finish.
      if (settled && i < finishAt) own = Math.max(own, provedOf(early)[i]!);
      sum += own;
      isProven &&= own >= final.score[i]!;
    }
    settled &&= isProven;
    return Math.max(value, sum);
  });
}

/** Bounds with all that was proven by having looked at everything. */
function provedOf({ score, bound, proven }: Found): Score {
  return bound.map((value, i) => (i < proven ? Math.max(value, score[i]!) : value));
}

function finishPlace({ order, ahead }: Goal): number {
  const names = order === 'late-finish' ? ['late', 'finish'] : ['finish', 'late'];
  names.splice(ahead, 0, 'windows');
  return 2 + names.indexOf('finish');
}

/** Visits of the whole that are of a part. */
function ofPart({ tasks }: Part, visits: readonly Visit[]): Visit[] {
  return visits.flatMap((visit) => {
    const task = tasks.indexOf(visit.task);
    return task < 0 ? [] : [{ ...visit, task }];
  });
}

function inWhole({ tasks }: Part, visits: readonly Visit[]): Visit[] {
  return visits.map((visit) => ({ ...visit, task: tasks[visit.task]! }));
}

/**
 * The parts of a problem that share no window, nothing of which there is so much, no link, no date and nothing that makes the
 * line good. One, where something stays where it is. O(tasks x slots).
 */
export function partsOf(problem: Problem): readonly Part[] {
  const { tasks, blocks = [], clusters = [], dues } = problem;
  const all = { problem, tasks: tasks.map((task) => task.index) };
  if (problem.pinned || tasks.some((task) => task.joins)) return [all];
  const up = tasks.map((task) => task.index);
  const rootOf = (index: number): number => {
    let root = index;
    while (up[root] !== root) root = up[root]!;
    for (let at = index; up[at] !== root;) [at, up[at]] = [up[at]!, root];
    return root;
  };
  const first = new Map<string, number>();
  const join = (index: number, key: string): void => {
    const other = first.get(key);
    if (other === undefined) first.set(key, index);
    else up[rootOf(index)] = rootOf(other);
  };
  const windows = new Map<Task['slots'], ReadonlySet<number>>();
  for (const { index, slots, demands, before, activity } of tasks) {
    join(index, `task ${index}`);
    join(index, `package ${activity.package}`);
    for (const { supply } of demands) join(index, `supply ${supply}`);
    for (const { task } of before) join(index, `task ${task}`);
    let own = windows.get(slots);
    if (!own) windows.set(slots, (own = new Set(slots.map(({ window }) => window))));
    for (const window of own) if (window >= 0) join(index, `window ${window}`);
  }
  const together = [
    ...dues.map((due) => due.tasks),
    ...blocks.map(({ members, runners }) => [...members, ...runners]),
    ...clusters.map((cluster) => cluster.tasks),
  ];
  for (const some of together) for (const index of some) up[rootOf(index)] = rootOf(some[0]!);
  const groups = new Map<number, number[]>();
  for (const { index } of tasks) {
    const root = rootOf(index);
    const known = groups.get(root);
    if (known) known.push(index);
    else groups.set(root, [index]);
  }
  if (groups.size < 2) return [all];
  return [...groups.values()].map((some) => ({ problem: partIn(problem, some), tasks: some }));
}

function partIn(problem: Problem, some: readonly number[]): Problem {
  const { tasks, blocks = [], clusters = [], dues, order } = problem;
  const place = new Map(some.map((index, at) => [index, at]));
  const here = (all: readonly number[]): number[] => all.flatMap((index) => place.get(index) ?? []);
  const tie = (each: Tie): Tie => ({ ...each, task: place.get(each.task)! });
  const ownBlocks = blocks.flatMap(({ members, runners }, at) =>
    place.has([...members, ...runners][0]!) ? [at] : [],
  );
  const blockPlace = new Map(ownBlocks.map((block, at) => [block, at]));
  return {
    ...problem,
    tasks: some.map((old, index): Task => {
      const { block, ...task } = tasks[old]!;
      return {
        ...task,
        ...(block !== undefined && { block: blockPlace.get(block)! }),
        index,
        before: task.before.map(tie),
        after: task.after.map(tie),
      };
    }),
    order: here(order),
    dues: dues.flatMap((due) =>
      place.has(due.tasks[0]!) ? [{ ...due, tasks: here(due.tasks) }] : [],
    ),
    ...(problem.blocks && {
      blocks: ownBlocks.map((at) => ({
        members: here(blocks[at]!.members),
        runners: here(blocks[at]!.runners),
      })),
      clusters: clusters.flatMap((cluster) =>
        place.has(cluster.tasks[0]!)
          ? [
              {
                blocks: cluster.blocks.map((at) => blockPlace.get(at)!),
                tasks: here(cluster.tasks),
              },
            ]
          : [],
      ),
    }),
  };
}
