import { addMinutes, durationText, MINUTE } from '../../calendar/index.js';
import { needsOf } from '../../model/index.js';
import { Board } from '../problem/board.js';
import { asOpen, bookedOf, problemOf, type Relaxation } from '../problem/compile.js';
import { momentText } from '../problem/eligibility.js';
import { shortestExtension, type Extension } from './extension.js';
import { headsOf } from '../problem/heads.js';
import { mostFree } from '../problem/profile.js';
import { visitMinutes, type Problem, type Task } from '../problem/problem.js';
import { shiftReason } from './shift-reason.js';
import { datesOf, smallestFirst } from './smallest-first.js';
import { solve } from './solo.js';
import { blockReasons } from './block-reasons.js';
import type { TimeCase } from './time-causes.js';
import type { Reason } from './types.js';

const relaxations = ['resources', 'alone', 'not-before', 'key-date'] as const;
type Eased = (typeof relaxations)[number];

/**
 * Every reason of time and resources why the work does not all fit, each with its near miss; never empty.
 * `extension`: the minutes by which a later end alone would cure it all.
 */
export function timeReasons(one: TimeCase): { reasons: Reason[]; extension: number | undefined } {
  const { plan, window, activities, book, problem } = one;
  const loops = problem.tasks.filter((task) => task.rank < 0);
  if (loops.length > 0)
    return {
      reasons: [
        {
          code: 'waits-for-itself',
          text: `${loops.map((task) => task.activity.id).join(', ')} wait for one another in a ring`,
        },
      ],
      extension: undefined,
    };

  const heads = headsOf(new Board(problem));
  const reasons = problem.tasks.flatMap((task) => [
    ...stretchReasons(one, task),
    ...shiftReason(plan, task),
    ...supplyReasons(one, task),
    ...dateReasons(one, task, heads.ends[task.index]!),
    ...curingReasons(one, task, heads.ends),
  ]);
  const has = (code: string): boolean => reasons.some((reason) => reason.code.startsWith(code));
  const without = (...left: Relaxation[]): ReadonlySet<Relaxation> => new Set(['place', ...left]);

  const extension = shortestExtension(plan, window, activities, book, without());
  if (extension) reasons.unshift(tooShort(one, extension, reasons.length === 0, 'fits if'));

  for (const cause of relaxations) {
    if (has(codeOf[cause]) || !concerns(cause, problem)) continue;
    const eased = problemOf(plan, { windows: [window], activities, without: without(cause) }, book);
    if (solve(eased).done) reasons.push(easedReason(cause, one));
  }
  if (!extension) {
    // Something else holds it up for ever; the time that would be missing without that is still worth knowing.
    const all = without(...relaxations);
    const eased = problemOf(plan, { windows: [window], activities, without: all }, book);
    if (!solve(eased).done) {
      const longer = shortestExtension(plan, window, activities, book, all);
      if (longer)
        reasons.push(tooShort(one, longer, false, 'with the rest of the reasons cured, fits if'));
    }
  }
  if (reasons.length === 0)
    reasons.push({
      code: 'too-short',
      text: one.proven
        ? `no time in ${window.id} takes all of it together, nor would a later end`
        : `no way was found to do all of it in ${window.id}, nor with a later end`,
    });
  const ordered = one.plain && reasons.length > 1 ? smallestFirst(one, reasons) : reasons;
  const told = [...blockReasons(one), ...ordered];
  return {
    reasons: one.proven ? told : [notShown(one), ...told],
    extension: extension?.minutes,
  };
}

const codeOf = {
  resources: 'resource-',
  alone: 'place-taken',
  'not-before': 'not-before',
  'key-date': 'key-date',
} as const;

/** The resources any one of which would do if there were more of it; all where it takes more than one. */
function namesToEase({ plan, window, activities, book, problem }: TimeCase): readonly string[] {
  const all = problem.supplies.flatMap((supply) => (supply.sole ? [] : [supply.id]));
  const alone = all.filter((id) => {
    const without = new Set<Relaxation>(['place', `resource ${id}`]);
    return solve(problemOf(plan, { windows: [window], activities, without }, book)).done;
  });
  return alone.length > 0 ? alone : all;
}

function concerns(cause: Eased, problem: Problem): boolean {
  if (cause === 'resources') return problem.supplies.some((supply) => !supply.sole);
  if (cause === 'alone') return problem.supplies.some((supply) => supply.sole);
  return problem.tasks.some(({ activity }) =>
    cause === 'key-date' ? activity.keyDate !== undefined : activity.notBefore !== undefined,
  );
}

function easedReason(cause: Eased, one: TimeCase): Reason {
  const { problem, window } = one;
  if (cause === 'resources') {
    const names = namesToEase(one);
    return {
      code: 'resource-short',
      text: `there is not enough of ${names.join(' or ')} at the right time in ${window.id}; with more it would fit`,
      resources: names,
    };
  }
  if (cause === 'alone') return placeTaken(one);
  const dated = datesOf(cause, problem, window);
  return cause === 'key-date'
    ? { code: 'key-date', text: `it fits ${window.id}, but not by the key date (${dated})` }
    : { code: 'not-before', text: `it would fit if it could begin sooner (not before: ${dated})` };
}

/** Work that goes on alone, where beside other work it would fit. */
function placeTaken({ problem, window }: TimeCase): Reason {
  const alone = problem.tasks.flatMap(({ activity }) =>
    activity.occupies === 'alone' ? [activity.id] : [],
  );
  return {
    code: 'place-taken',
    text: `${alone.join(', ')} must have the place alone; side by side with other work it would fit ${window.id}`,
  };
}

/** A piece that must run in one go and is longer than any usable stretch, though the minutes are there. */
function stretchReasons(one: TimeCase, task: Task): Reason[] {
  if (task.outside) return [];
  const { window, book } = one;
  const needed = visitMinutes(task, 1);
  const longest = Math.max(0, ...task.slots.map((slot) => slot.end - slot.start));
  const total = task.slots.reduce((sum, slot) => sum + slot.end - slot.start, 0);
  if (needed <= longest || task.slots.length < 2 || total < needed) return [];
  const { activity } = task;
  const open = asOpen(window);
  const rows = book.of(open, { ...needsOf(activity), isolation: bookedOf(window, activity) }).rows;
  const breaks = new Set(
    rows.flatMap((row) => (row.kind === 'curfew' || row.kind === 'shift-break' ? [row.rule] : [])),
  );
  const by = breaks.size > 0 ? `, broken by ${[...breaks].join(' and ')}` : '';
  const what =
    activity.work.kind === 'whole' ? 'in one go' : 'for one unit with set up and make safe';
  return [
    {
      code: 'no-usable-stretch',
      text: `${activity.id} needs ${durationText(needed)} ${what}; the longest usable stretch of ${window.id} is ${durationText(longest)}${by}`,
    },
  ];
}

function supplyReasons(one: TimeCase, task: Task): Reason[] {
  const { window } = one;
  return task.demands.flatMap(({ supply, amount }) => {
    const { id, profile, sole } = one.problem.supplies[supply]!;
    if (sole) return [];
    const most = Math.max(0, ...task.slots.map((slot) => mostFree(profile, slot.start, slot.end)));
    if (most >= amount || task.slots.length === 0) return [];
    const where = task.outside ? 'at any time' : `in the usable time of ${window.id}`;
    return most === 0
      ? [
          {
            code: 'resource-not-there',
            text: `${task.activity.id} needs ${id}; none is there ${where}`,
            resources: [id],
          },
        ]
      : [
          {
            code: 'resource-short',
            text: `${task.activity.id} needs ${amount} of ${id}; at most ${most} ${most === 1 ? 'is' : 'are'} there ${where}`,
            resources: [id],
          },
        ];
  });
}

/** Concrete that this work waits for: when it has cured, where that is after the window, or that nobody can say. */
function curingReasons(one: TimeCase, task: Task, ends: readonly number[]): Reason[] {
  const { window, problem } = one;
  const last = task.slots.at(-1)?.end ?? Number.NEGATIVE_INFINITY;
  return task.before.flatMap((tie): Reason[] => {
    const poured = ends[tie.task]!;
    if (!tie.cure || !Number.isFinite(poured)) return [];
    const ready = tie.cure.readyAt(poured);
    const [id, waits] = [problem.tasks[tie.task]!.activity.id, task.activity.id];
    if (!Number.isFinite(ready))
      return [
        {
          code: 'curing-not-known',
          text: `${waits} waits for ${id} to cure, and the temperatures given end before it has`,
        },
      ];
    if (ready + tie.gap + visitMinutes(task, 1) <= last) return [];
    return [
      {
        code: 'curing',
        text: `${waits} waits for ${id} to cure: not before ${momentText(problem.base + ready * MINUTE, window.zone)}, too late for ${window.id}`,
      },
    ];
  });
}

function dateReasons(one: TimeCase, task: Task, soonest: number): Reason[] {
  const { window, problem } = one;
  const { activity } = task;
  const reasons: Reason[] = [];
  const last = task.slots.at(-1)?.end;
  if (last !== undefined && !task.outside && task.earliest + visitMinutes(task, 1) > last) {
    const tooLate = Math.round((task.earliest + visitMinutes(task, 1) - last) as number);
    reasons.push({
      code: 'not-before',
      text: `${activity.id} may not begin before ${momentText(activity.notBefore!, window.zone)}, ${durationText(tooLate)} too late for ${window.id}`,
    });
  }
  if (soonest > task.due && soonest < Number.POSITIVE_INFINITY) {
    const late = soonest - task.due;
    reasons.push({
      code: 'key-date',
      text: `${activity.id} would finish ${durationText(late)} after its key date ${momentText(problem.base + task.due * MINUTE, window.zone)} at the soonest`,
    });
  }
  return reasons;
}

/** What stands before all other reasons where the search for a way was given up. */
function notShown({ window, problem }: TimeCase): Reason {
  return {
    code: 'not-shown',
    text: `not shown to fit ${window.id}: no way was found to do its ${problem.tasks.length} activities in time, but not every order of them was looked at`,
  };
}

function tooShort(one: TimeCase, extension: Extension, alone: boolean, then: string): Reason {
  const { window } = one;
  const { minutes: shortBy, proven } = extension;
  const end = momentText(addMinutes(window.end, shortBy), window.zone);
  const today = momentText(window.end, window.zone);
  // The day is only worth reading when it changes.
  const shown = end.slice(0, 10) === today.slice(0, 10) ? end.slice(11) : end;
  const leave = alone && one.plain ? unitsToLeave(one) : [];
  const ways = [`the end moves to ${shown}`, ...leave].join(', or if ');
  return {
    code: 'too-short',
    text: `short by ${proven ? '' : 'at most '}${durationText(shortBy)}; ${then} ${ways}`,
    shortByMinutes: shortBy,
  };
}

/** For each repeated activity, how few of its units have to be left out for the rest to fit as booked. */
function unitsToLeave(one: TimeCase): string[] {
  return one.problem.tasks.flatMap((task) => {
    if (task.units < 2) return [];
    const fits = (out: number): boolean => {
      const tasks = one.problem.tasks.map((each) =>
        each === task ? { ...each, units: each.units - out } : each,
      );
      return solve({ ...one.problem, tasks }).done;
    };
    let high = task.units - 1;
    if (!fits(high)) return [];
    let low = 1;
    while (low < high) {
      const middle = Math.floor((low + high) / 2);
      if (fits(middle)) high = middle;
      else low = middle + 1;
    }
    return [
      `${high} of ${task.units} units ${high === 1 ? 'is' : 'are'} left out (${task.activity.id})`,
    ];
  });
}
