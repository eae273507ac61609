import { Board, slotsIn } from './board.js';
import { headsOf } from './heads.js';
import { afterTie, visitMinutes, type Problem, type Slot, type Task } from './problem.js';

/**
 * The problem without usable time that is of no use: of a block, that in windows which do not take the whole of it,
 * each task by itself and one after another as they wait for one another. Every plan of the one is one of the other.
 */
export function narrowed(problem: Problem): Problem {
  const { blocks, tasks, pinned = [] } = problem;
  if (!blocks) return problem;
  const { starts } = headsOf(new Board(problem));
  const kept = new Set(pinned.map((visit) => tasks[visit.task]!.block));
  const slots = new Map<number, readonly Slot[]>();
  blocks.forEach(({ members, runners }, at) => {
    const own = new Set([...members, ...runners]);
    if (kept.has(at) || own.size < 2) return;
    const order = problem.order.filter((index) => own.has(index));
    const windows = [...new Set(tasks[members[0]!]!.slots.map((slot) => slot.window))];
    const good = new Set(windows.filter((window) => takes(problem, order, starts, window)));
    if (
      good.size === windows.length &&
      members.every((member) => tasks[member]!.slots === tasks[members[0]!]!.slots)
    )
      return;
    const known = new Map<readonly Slot[], readonly Slot[]>();
    for (const index of members) {
      const all = tasks[index]!.slots;
      if (!known.has(all))
        known.set(
          all,
          all.filter((slot) => good.has(slot.window)),
        );
      slots.set(index, known.get(all)!);
    }
  });
  if (slots.size === 0) return problem;
  return {
    ...problem,
    tasks: tasks.map((task): Task => ({ ...task, slots: slots.get(task.index) ?? task.slots })),
  };
}

/** Whether the tasks of a block, in the order of their links, may all find room in a window, others left aside. */
function takes(
  { tasks }: Problem,
  order: readonly number[],
  starts: readonly number[],
  window: number,
): boolean {
  const began = new Map<number, number>();
  const ended = new Map<number, number>();
  return order.every((index) => {
    const task = tasks[index]!;
    let from = Math.max(task.earliest, task.lastOnly ? Number.NEGATIVE_INFINITY : starts[index]!);
    for (const tie of task.before) {
      const at = (tie.fromStart ? began : ended).get(tie.task);
      // Of repeated work that goes on before the block, the start may lie in another window.
      if (at !== undefined && !(tie.fromStart && tasks[tie.task]!.lastOnly))
        from = Math.max(from, afterTie(tie, at));
    }
    const slot = slotsIn(task.slots, window).find(
      (item) => Math.max(item.start, from) + visitMinutes(task, 1) <= item.end,
    );
    if (!slot) return false;
    const start = Math.max(slot.start, from);
    const end = start + visitMinutes(task, 1);
    began.set(index, start);
    ended.set(index, task.lastOnly ? end : soonestEnd(task, window, start));
    return ended.get(index)! < Number.POSITIVE_INFINITY;
  });
}

/** When enough usable time of a window has passed for all units, whatever the visits; infinity where there is too little. */
function soonestEnd(task: Task, window: number, from: number): number {
  let missing = visitMinutes(task, task.units);
  let reached = from;
  for (const slot of slotsIn(task.slots, window)) {
    const start = Math.max(slot.start, reached);
    if (slot.end <= start) continue;
    if (slot.end - start >= missing) return start + missing;
    missing -= slot.end - start;
    reached = slot.end;
  }
  return Number.POSITIVE_INFINITY;
}
