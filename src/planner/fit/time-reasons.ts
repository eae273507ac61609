import { MINUTE } from '../../calendar/index.js';
import type { AccessWindow, Worded } from '../../model/index.js';
import { sayReason } from '../reason-sentences.js';
import { asOpen, type Relaxation } from '../problem/compile.js';
import { shortestExtension, type LaterEnd } from './extension.js';
import { Board } from '../problem/board.js';
import { headsOf } from '../problem/heads.js';
import { mostFree } from '../problem/profile.js';
import { minutesUp } from '../problem/skeleton.js';
import { visitMinutes, type Problem, type Task } from '../problem/problem.js';
import { shiftReason } from './shift-reason.js';
import { curedBy, datesOf, fineCauses, fineReasons } from './joint-reasons.js';
import { smallestFirst } from './smallest-first.js';
import { blockReasons } from './block-reasons.js';
import type { TimeCase } from './time-causes.js';
import { tooShort } from './too-short.js';
import type { SharedReason } from './types.js';

const relaxations = ['resources', 'alone', 'not-before', 'key-date'] as const;
type Eased = (typeof relaxations)[number];
type Names = readonly string[];

/**
 * Every reason of time and resources why the work does not all fit, each with its near miss; never empty.
 * `extension`: the minutes by which a later end alone would cure it all.
 */
export function timeReasons(item: TimeCase): {
  reasons: SharedReason[];
  extension: number | undefined;
  /** Minutes after the window's end as far as the answer looked. */
  beyond: number;
} {
  const { trials, window, problem } = item;
  if (problem.order.length < problem.tasks.length) {
    const loops = problem.tasks.filter((task) => task.rank < 0);
    return {
      reasons: [
        {
          code: 'waits-for-itself',
          words: said(
            sayReason('wait-in-a-ring', { activities: loops.map((task) => task.activity.id) }),
          ),
        },
      ],
      extension: undefined,
      beyond: 0,
    };
  }

  const reasons = [...taskReasons(item), ...supplyReasons(item)];
  const has = (code: string): boolean => reasons.some((reason) => reason.code.startsWith(code));

  const later = shortestExtension(trials, window, []);
  let { beyond } = later;
  if (later.minutes !== undefined)
    reasons.unshift(tooShort(item, later, reasons.length === 0, !item.plain));

  const eased = once(() => trials.solve({ window, longerBy: 0, without: relaxations }));
  for (const cause of relaxations) {
    if (has(codeOf[cause]) || !concerns(cause, problem)) continue;
    // What does not fit with all of them left out of account does not with any.
    if (!eased().done && eased().proven) break;
    if (trials.solve({ window, longerBy: 0, without: [cause] }).done)
      reasons.push(easedReason(cause, item));
  }
  // Something else holds it up for ever; what is in the way once that is cured is still worth knowing.
  if (later.minutes === undefined) {
    const rest = theRest(item, reasons, later, eased().done);
    reasons.push(...rest.reasons);
    beyond = Math.max(beyond, rest.beyond);
  }
  if (reasons.length === 0)
    reasons.push({
      code: 'too-short',
      words: noTimeWords(item, later),
    });
  const isOrdered = item.plain && reasons.length > 1;
  const ordered = isOrdered ? smallestFirst(item, reasons) : reasons;
  const blocks = blockReasons(
    item,
    ordered.find((reason) => reason.code === 'too-short'),
  );
  const ranked = [...blocks, ...ordered];
  return {
    reasons: item.proven ? ranked : [notShown(item), ...ranked],
    extension: later.minutes,
    beyond: isOrdered || blocks.length > 0 ? Number.POSITIVE_INFINITY : beyond,
  };
}

/** What keeps each activity out by itself. */
function taskReasons(item: TimeCase): SharedReason[] {
  const { trials, problem } = item;
  const { skeleton, plan } = trials;
  // The earliest that each could finish by itself.
  const ends =
    skeleton.cures > 0 || problem.dues.length > 0 ? headsOf(new Board(problem)).ends : [];
  const reasons: SharedReason[] = [];
  for (const task of problem.tasks) {
    if (task.slots.length > 1) reasons.push(...stretchReasons(item, task));
    for (const reason of shiftReason(plan, task))
      reasons.push({ code: reason.code, words: said(reason) });
    const isDated = task.earliest > Number.NEGATIVE_INFINITY || task.due < Number.POSITIVE_INFINITY;
    if (isDated) reasons.push(...dateReasons(item, task, ends[task.index]));
    if (skeleton.cures > 0) reasons.push(...curingReasons(item, task, ends));
  }
  return reasons;
}

/** Works something out when it is first asked for. */
function once<T extends object>(make: () => T): () => T {
  let known: T | undefined;
  return () => (known ??= make());
}

/** Words that are the same of every window. */
const said = (words: Worded) => (): Worded => words;

/** That neither a window nor a later end of it takes the work, as far as each is shown. */
function noTimeWords({ proven }: TimeCase, later: LaterEnd): SharedReason['words'] {
  const upTo = later.minutes === undefined ? later.upTo : null;
  const noLaterEnd = proven && later.proven;
  return ({ id }) => sayReason('no-time-together', { window: id, proven, upTo, noLaterEnd });
}

const codeOf = {
  resources: 'resource-',
  alone: 'place-taken',
  'not-before': 'not-before',
  'key-date': 'key-date',
} as const;

/** The resources any one of which would do if there were more of it; where it takes more than one, some that do. */
function namesToEase({ trials, window, problem }: TimeCase): { names: Names; each: boolean } {
  const fitsWith = (names: Names): boolean =>
    trials.solve({ window, longerBy: 0, without: names.map((id) => `resource ${id}` as const) })
      .done;
  const all = problem.supplies.flatMap((supply) => (supply.sole ? [] : [supply.id]));
  const alone = all.filter((id) => fitsWith([id]));
  if (alone.length > 0) return { names: alone, each: false };
  let names: Names = all;
  for (const id of all) {
    const fewer = names.filter((name) => name !== id);
    if (fitsWith(fewer)) names = fewer;
  }
  return { names, each: true };
}

function concerns(cause: Eased, problem: Problem): boolean {
  if (cause === 'resources') return problem.supplies.some((supply) => !supply.sole);
  if (cause === 'alone') return problem.supplies.some((supply) => supply.sole);
  return problem.tasks.some(({ activity }) =>
    cause === 'key-date' ? activity.keyDate !== undefined : activity.notBefore !== undefined,
  );
}

/**
 * What is in the way once all that is said is cured, where no later end by itself is enough; with the end that then is, if
 * it takes one. With all of it left out of account the work fits: that was tried by placing.
 *
 * @param fitsEased It fits as booked with everything left out of account.
 */
function theRest(
  item: TimeCase,
  reasons: readonly SharedReason[],
  later: LaterEnd,
  fitsEased: boolean,
): { reasons: readonly SharedReason[]; beyond: number } {
  const { trials, window } = item;
  const said = reasons.flatMap(curedBy);
  if (fitsEased) return { reasons: inTheWay(item, 0, said), beyond: 0 };
  let longer = said.length === 0 ? later : shortestExtension(trials, window, said);
  let { beyond } = longer;
  let others: readonly SharedReason[] = [];
  if (longer.minutes === undefined) {
    longer = shortestExtension(trials, window, relaxations);
    beyond = Math.max(beyond, longer.beyond);
    if (longer.minutes === undefined) return { reasons: [], beyond };
    others = inTheWay(item, longer.minutes, said);
  }
  const isPlain = item.plain && reasons.length + others.length === 0;
  return {
    reasons: [...others, tooShort(item, longer, false, !isPlain)],
    beyond,
  };
}

/** As little as has to be cured beside what is said for the work to fit with an end so much later. */
function inTheWay(
  item: TimeCase,
  longerBy: number,
  said: readonly Relaxation[],
): readonly SharedReason[] {
  const { trials, window, problem } = item;
  const solve = (without: readonly Relaxation[]) =>
    trials.solve({ window, longerBy, without: [...said, ...without] });
  const plain = solve([]);
  if (plain.done) return [];
  let { proven } = plain;
  let needed = fineCauses(problem).filter((cause) => !said.includes(cause));
  for (const cause of needed) {
    const fewer = needed.filter((each) => each !== cause);
    const found = solve(fewer);
    if (found.done) needed = fewer;
    else proven &&= found.proven;
  }
  return fineReasons(needed, problem).map((reason): SharedReason => {
    if (longerBy === 0) return reason;
    // Of this end alone: a later one may do without it.
    const words = (of: AccessWindow): Worded =>
      sayReason('with-later-end', { minutes: longerBy, proven, why: reason.words(of) });
    return { ...reason, words };
  });
}

function easedReason(cause: Eased, item: TimeCase): SharedReason {
  const { problem } = item;
  const others = !item.plain;
  if (cause === 'resources') {
    const { names, each } = namesToEase(item);
    return {
      code: 'resource-short',
      words: ({ id }) =>
        sayReason('more-resource-would-fit', { resources: names, each, window: id, others }),
      resources: names,
    };
  }
  if (cause === 'alone') return placeTaken(item);
  const dated = datesOf(cause, problem);
  return cause === 'key-date'
    ? {
        code: 'key-date',
        words: (window) =>
          sayReason('fits-but-late', { window: window.id, dates: dated(window), others }),
      }
    : {
        code: 'not-before',
        words: (window) => sayReason('sooner-would-fit', { dates: dated(window), others }),
      };
}

/** Work that goes on alone, where beside other work it would fit. */
function placeTaken(item: TimeCase): SharedReason {
  const alone = item.problem.tasks.flatMap(({ activity }) =>
    activity.occupies === 'alone' ? [activity.id] : [],
  );
  return {
    code: 'place-taken',
    words: ({ id }) =>
      sayReason('side-by-side-would-fit', { activities: alone, window: id, others: !item.plain }),
  };
}

/** A piece that must run in one go and is longer than any usable stretch, though the minutes are there. */
function stretchReasons(item: TimeCase, task: Task): SharedReason[] {
  if (task.outside) return [];
  const { window, trials } = item;
  const needed = visitMinutes(task, 1);
  const longest = Math.max(0, ...task.slots.map((slot) => slot.end - slot.start));
  const total = task.slots.reduce((sum, slot) => sum + slot.end - slot.start, 0);
  if (needed <= longest || task.slots.length < 2 || total < needed) return [];
  const { activity } = task;
  const { groups, groupOf } = trials.skeleton;
  const { needs } = groups[groupOf[task.index]!]!;
  const { rows } = trials.book.of(asOpen(window, needs), needs);
  const breaks = new Set(
    rows.flatMap((row) => (row.kind === 'curfew' || row.kind === 'shift-break' ? [row.rule] : [])),
  );
  return [
    {
      code: 'no-usable-stretch',
      words: ({ id }) =>
        sayReason('no-usable-stretch', {
          activity: activity.id,
          needed,
          unit: activity.work.kind === 'units',
          window: id,
          longest,
          breaks: [...breaks],
        }),
    },
  ];
}

/** Too little of a resource wherever the work could be; what lacks the same is told of together. */
function supplyReasons(item: TimeCase): SharedReason[] {
  const { supplies, tasks } = item.problem;
  const found = new Map<string, { lack: Lack; names: string[] }>();
  for (const task of tasks)
    for (const { supply, amount } of task.demands) {
      const { id, profile, sole } = supplies[supply]!;
      if (sole || task.slots.length === 0 || !profile.free.some((free) => free < amount)) continue;
      let most = 0;
      for (const slot of task.slots) most = Math.max(most, mostFree(profile, slot.start, slot.end));
      if (most >= amount) continue;
      const lack = { id, amount, most, outside: task.outside };
      const key = most === 0 ? `${id} ${task.outside}` : JSON.stringify(lack);
      const known = found.get(key);
      if (known) known.names.push(task.activity.id);
      else found.set(key, { lack, names: [task.activity.id] });
    }
  return [...found.values()].map(({ lack, names }) => lackReason(lack, names));
}

interface Lack {
  readonly id: string;
  readonly amount: number;
  readonly most: number;
  readonly outside: boolean;
}

function lackReason({ id, amount, most, outside }: Lack, names: readonly string[]): SharedReason {
  const given = { activities: names, resource: id };
  const where = (window: AccessWindow): string | null => (outside ? null : window.id);
  return {
    code: most === 0 ? 'resource-not-there' : 'resource-short',
    words:
      most === 0
        ? (window) => sayReason('resource-not-there', { ...given, window: where(window) })
        : (window) =>
            sayReason('resource-short', { ...given, amount, most, window: where(window) }),
    resources: [id],
    activities: names,
  };
}

/** Concrete that this work waits for: when it has cured, where that is after the window, or that nobody can say. */
function curingReasons(item: TimeCase, task: Task, ends: readonly number[]): SharedReason[] {
  const { problem } = item;
  const last = task.slots.at(-1)?.end ?? Number.NEGATIVE_INFINITY;
  return task.before.flatMap((tie): SharedReason[] => {
    const poured = ends[tie.task]!;
    if (!tie.cure || !Number.isFinite(poured)) return [];
    const ready = tie.cure.readyAt(poured);
    const [id, waits] = [problem.tasks[tie.task]!.activity.id, task.activity.id];
    if (!Number.isFinite(ready))
      return [
        {
          code: 'curing-not-known',
          words: said(sayReason('curing-not-known', { activity: waits, pour: id })),
        },
      ];
    if (ready + tie.gap + visitMinutes(task, 1) <= last) return [];
    const readyAt = problem.base + ready * MINUTE;
    return [
      {
        code: 'curing',
        words: (window) =>
          sayReason('curing-too-late', {
            activity: waits,
            pour: id,
            ready: { at: readyAt, zone: window.zone },
            window: window.id,
          }),
      },
    ];
  });
}

/** @param soonest The earliest that it could finish by itself; needed where it has a key date. */
function dateReasons(
  item: TimeCase,
  task: Task,
  soonest = Number.POSITIVE_INFINITY,
): SharedReason[] {
  const { problem } = item;
  const { activity } = task;
  const reasons: SharedReason[] = [];
  const last = task.slots.at(-1)?.end;
  const minutes = visitMinutes(task, 1);
  if (last !== undefined && !task.outside && task.earliest + minutes > last)
    reasons.push({
      code: 'not-before',
      words: (window) => {
        const base = Math.floor(window.start / MINUTE) * MINUTE;
        const tooLate = minutesUp(activity.notBefore!, base) + minutes - last;
        return sayReason('may-not-begin-before', {
          activity: activity.id,
          from: { at: activity.notBefore!, zone: window.zone },
          late: tooLate,
          window: window.id,
        });
      },
      activities: [activity.id],
    });
  if (soonest > task.due && soonest < Number.POSITIVE_INFINITY) {
    const late = soonest - task.due;
    const due = problem.base + task.due * MINUTE;
    reasons.push({
      code: 'key-date',
      words: ({ zone }) =>
        sayReason('after-its-key-date', { activity: activity.id, late, due: { at: due, zone } }),
      activities: [activity.id],
    });
  }
  return reasons;
}

/** What stands before all other reasons where the search for a way was given up. */
function notShown({ problem: { tasks } }: TimeCase): SharedReason {
  const count = tasks.length;
  return {
    code: 'not-shown',
    words: ({ id }) => sayReason('not-shown', { window: id, count }),
  };
}
