import { isSolePlace } from '../problem/sole-places.js';
import { Board, fewestCauses, type Problem, type Reason, type Task } from '../fit/index.js';
import { sayUnplaced } from './unplaced-sentences.js';

/**
 * What may stand in the way of one more visit of a task in the windows that take it: its length, a resource, the work
 * that is placed, what it waits for, or its date.
 */
export type UnplacedCause =
  | 'length'
  | `resource ${string}`
  | 'other-work'
  | 'links'
  | 'not-before'
  | 'needed-before';

/** The causes that bear on a task. */
export function causesOf(problem: Problem, task: Task): UnplacedCause[] {
  return [
    'length',
    ...task.demands.map(({ supply }) => `resource ${problem.supplies[supply]!.id}` as const),
    ...(task.demands.length > 0 ? (['other-work'] as const) : []),
    ...(task.before.length > 0 ? (['links'] as const) : []),
    ...(task.activity.notBefore === undefined ? [] : (['not-before'] as const)),
    ...(task.latestEnd === undefined && task.latestStart === undefined
      ? []
      : (['needed-before'] as const)),
  ];
}

/**
 * The fewest of the causes that are enough for no place to be left beside what is placed; empty where no window takes
 * the task at all. A length that is no cause is thought to be a minute.
 */
export function fewestUnplacedCauses(
  problem: Problem,
  board: Board,
  task: Task,
): readonly UnplacedCause[] {
  if (task.slots.length === 0) return [];
  const all = causesOf(problem, task);
  return fewestCauses(all, (some) => ({ fits: hasPlace(problem, board, task, some), proven: true }))
    .causes;
}

function hasPlace(
  problem: Problem,
  board: Board,
  task: Task,
  causes: readonly UnplacedCause[],
): boolean {
  const { latestEnd, latestStart, ...free } = task;
  const needed = causes.includes('needed-before');
  const alone: Task = {
    ...free,
    ...(needed && latestEnd !== undefined && { latestEnd }),
    ...(needed && latestStart !== undefined && { latestStart }),
    ...(causes.includes('length') ? {} : { perUnit: 1, setUp: 0, makeSafe: 0 }),
    index: 0,
    units: 1,
    earliest: causes.includes('not-before') ? task.earliest : Number.NEGATIVE_INFINITY,
    before: [],
    after: [],
    demands: task.demands.filter(({ supply }) =>
      causes.includes(`resource ${problem.supplies[supply]!.id}`),
    ),
  };
  const beside = causes.includes('other-work');
  const { pinned: _, ...rest } = problem;
  const small: Problem = {
    ...rest,
    tasks: [alone],
    dues: [],
    order: [0],
    supplies: problem.supplies.map((supply, i) =>
      beside ? { ...supply, profile: board.free(i) } : supply,
    ),
  };
  const from = causes.includes('links')
    ? board.release({ ...task, earliest: alone.earliest })
    : Math.max(alone.earliest, board.since[task.index]!);
  return new Board(small).find(alone, 1, from) !== undefined;
}

/** The reasons of the fewest causes before all others, and marked. */
export function smallestFirst(
  causes: readonly UnplacedCause[],
  reasons: readonly Reason[],
): Reason[] {
  if (reasons.length < 2) return reasons.slice();
  const marked = reasons.filter((reason) => causes.some((cause) => isOf(cause, reason)));
  return [
    ...marked.map((reason) => ({ ...reason, enough: 'proven' }) as const),
    ...causes
      .filter((cause) => !reasons.some((reason) => isOf(cause, reason)))
      .map((cause): Reason => ({ ...ownReason(cause), enough: 'proven' })),
    ...reasons.filter((reason) => !marked.includes(reason)),
  ];
}

function isOf(cause: UnplacedCause, { code, resources }: Reason): boolean {
  if (cause === 'length') return code === 'no-usable-stretch' || code === 'too-short';
  if (cause === 'other-work') return code === 'no-room';
  if (cause === 'links') return code === 'curing-not-known';
  if (cause === 'not-before' || cause === 'needed-before') return code === cause;
  return resources?.includes(cause.slice('resource '.length)) === true;
}

function ownReason(cause: UnplacedCause): Reason {
  if (cause === 'length')
    return { code: 'no-usable-stretch', ...sayUnplaced('no-time-long-enough', {}) };
  if (cause === 'other-work') return { code: 'no-room', ...sayUnplaced('other-work-has-it', {}) };
  if (cause === 'links') return { code: 'follows', ...sayUnplaced('too-little-after', {}) };
  if (cause === 'not-before') return { code: cause, ...sayUnplaced('not-begin-sooner', {}) };
  if (cause === 'needed-before') return { code: cause, ...sayUnplaced('work-waits-for-it', {}) };
  const name = cause.slice('resource '.length);
  if (isSolePlace(name))
    return { code: 'place-taken', ...sayUnplaced('place-alone', { place: name }) };
  return {
    code: 'resource-short',
    ...sayUnplaced('not-enough-when-used', { resource: name }),
    resources: [name],
  };
}
