// One used window withdrawn, cut by an hour or by four: the pieces that a repair moves beside the fewest that must, found
// by a general solver. `node bench/run.mjs plans/repairs [--family R --seeds 1,2] [--windows N03,S02] [--seconds 60]`;
// without a family the sample. All times are processor time.
import { parseArgs } from 'node:util';
import { english } from '../../src/engine/english/say.js';
import { MINUTE } from '../../src/calendar/index.js';
import type { Placement, Plan } from '../../src/model/index.js';
import { placementsOf, type Problem, type Visit } from '../../src/planner/fit/index.js';
import { repair, type Repair } from '../../src/planner/repair/repair.js';
import { allocate, preparedOf } from '../../src/planner/search/allocate.js';
import { verify } from '../../src/verify/index.js';
import { conditions } from '../shared/figures.js';
import { samplePlan } from '../shared/sample.js';
import { families, planOfFamily } from './families.js';
import { fewestMoved, type Was } from './fewest-moved.js';
import { cpu } from './in-order.js';

const { values: asked } = parseArgs({
  options: {
    family: { type: 'string' },
    seeds: { type: 'string', default: '1' },
    windows: { type: 'string' },
    changes: { type: 'string', default: 'withdrawn,60,240' },
    seconds: { type: 'string', default: '60' },
    every: { type: 'string', default: '1' },
    alone: { type: 'boolean', default: false },
  },
});

const clock = (): number => 0;

function changed(plan: Plan, id: string, change: string): Plan {
  const windows = plan.windows.map((window) => {
    if (window.id !== id) return window;
    if (change === 'withdrawn') return { ...window, status: 'withdrawn' as const };
    return {
      ...window,
      end: Math.max(window.start + MINUTE, window.end - Number(change) * MINUTE),
    };
  });
  return { ...plan, windows };
}

/** The problem with the dates that the plan before kept, or as late as it was. */
function agreedProblem(now: Plan, base: readonly Placement[]): Problem {
  const { problem } = preparedOf(now, { clock });
  const ends = new Map<string, number>();
  for (const { activity, to } of base)
    ends.set(activity, Math.max(ends.get(activity) ?? -Infinity, (to - problem.base) / MINUTE));
  const dues = problem.dues.map((due) => ({
    ...due,
    due: due.tasks.reduce(
      (last, task) => Math.max(last, ends.get(problem.tasks[task]!.activity.id) ?? last),
      due.due,
    ),
  }));
  return { ...problem, dues };
}

function wasOf(problem: Problem, base: readonly Placement[]): Was[] {
  const tasks = new Map(problem.tasks.map(({ activity, index }) => [activity.id, index]));
  const windows = new Map(problem.windows.map(({ id }, index) => [id, index]));
  return base.flatMap(({ activity, window, units = 1 }) =>
    window === null || !tasks.has(activity)
      ? []
      : [{ task: tasks.get(activity)!, window: windows.get(window), units }],
  );
}

function visitsOf(problem: Problem, placements: readonly Placement[]): Visit[] {
  const tasks = new Map(problem.tasks.map(({ activity, index }) => [activity.id, index]));
  const windows = new Map(problem.windows.map(({ id }, index) => [id, index]));
  return placements.map(({ activity, window, from, to, units = 1 }) => ({
    task: tasks.get(activity)!,
    window: window === null ? -1 : windows.get(window)!,
    start: (from - problem.base) / MINUTE,
    end: (to - problem.base) / MINUTE,
    units,
  }));
}

/** Left out, minutes late of the agreed dates, and pieces of which less is in their window than was. */
function valuesOf(
  problem: Problem,
  was: readonly Was[],
  placements: readonly Placement[],
): readonly [number, number, number] {
  const tasks = new Map(problem.tasks.map(({ activity, index }) => [activity.id, index]));
  const windows = new Map(problem.windows.map(({ id }, index) => [id, index]));
  const left = problem.tasks.map(({ units }) => units);
  const ends = problem.tasks.map(() => -Infinity);
  const there = new Map<string, number>();
  for (const { activity, window, to, units = 1 } of placements) {
    const task = tasks.get(activity)!;
    left[task]! -= units;
    ends[task] = Math.max(ends[task]!, (to - problem.base) / MINUTE);
    const key = `${task} ${window === null ? -1 : windows.get(window)}`;
    there.set(key, (there.get(key) ?? 0) + units);
  }
  let moved = 0;
  // The smallest first: as many stay as there is room for.
  for (const { task, window, units } of was.toSorted((a, b) => a.units - b.units)) {
    const key = `${task} ${window}`;
    const some = there.get(key) ?? 0;
    if (some < units) moved += 1;
    else there.set(key, some - units);
  }
  const late = problem.dues.map(({ due, tasks: own }) =>
    Math.max(0, ...own.map((task) => ends[task]! - due)),
  );
  return [
    left.filter((units) => units > 0).length,
    late.reduce((sum, each) => sum + each, 0),
    moved,
  ];
}

const plans: { name: string; plan: Plan }[] = [];
if (asked.family === undefined) plans.push({ name: 'sample', plan: await samplePlan() });
else
  for (const seed of asked.seeds.split(',').map(Number))
    plans.push({
      name: `${asked.family} ${seed}`,
      plan: planOfFamily(families[asked.family]!, seed),
    });

console.log(conditions());
for (const { name, plan } of plans) {
  const base = allocate(plan, { clock }).placements;
  const used = [...new Set(base.flatMap(({ window }) => window ?? []))].filter(
    (_, at) => at % Number(asked.every) === 0,
  );
  const tally = { asked: 0, within: 0, moved: 0, least: 0, worst: 0, settled: 0 };
  console.log(`${name}: ${base.length} pieces in ${used.length} windows`);
  for (const id of asked.windows?.split(',') ?? used)
    for (const change of asked.changes.split(',')) {
      const now = changed(plan, id, change);
      const began = cpu();
      const found: Repair = repair(now, base, { clock });
      const seconds = cpu() - began;
      const faults = verify(now, found.allocation);
      if (faults.length > 0) throw new Error(`${id} ${change}: ${english(faults[0]!.text)}`);
      const problem = agreedProblem(now, base);
      const was = wasOf(problem, base);
      const own = valuesOf(problem, was, found.allocation.placements);
      let line = `${id} ${change} | ours ${own.join(' ')} (at least ${found.fewest.lowerBound}${found.fewest.proven ? ', proven' : ''}) ${seconds.toFixed(1)} s, more ${found.more ? `${found.more.keyDatesMet} ${found.more.placed} ${found.more.moved}` : '-'}`;
      if (!asked.alone) {
        const known = {
          visits: visitsOf(problem, found.allocation.placements),
          whole: own[0] === 0 && own[1] === 0,
        };
        const least = await fewestMoved(problem, was, known, Number(asked.seconds));
        const theirs = placementsOf(problem, least.visits);
        // As much placed and no later with fewer moved than must: what was told of the least would be untrue.
        if (
          least.out === 0 &&
          least.late === 0 &&
          (least.moved ?? Infinity) < found.fewest.lowerBound
        )
          throw new Error(`${id} ${change}: ${least.moved} do, not ${found.fewest.lowerBound}`);
        const wrong = least.moved === undefined ? [] : verify(now, { placements: theirs });
        if (wrong.length > 0)
          throw new Error(`${id} ${change}, the peer: ${english(wrong[0]!.text)}`);
        line += ` | peer ${least.out} ${least.late} ${least.moved ?? '-'} (at least ${least.atLeast}${least.proven ? ', proven' : ''}) ${least.cpuSeconds.toFixed(1)} s`;
        const same = own[0] === least.out && own[1] === least.late;
        if (least.moved !== undefined && !least.proven) line += ' OPEN';
        if (!same)
          line +=
            own[0] < least.out || (own[0] === least.out && own[1] < least.late)
              ? ' BETTER'
              : ' WORSE';
        else {
          tally.asked += 1;
          tally.moved += own[2];
          tally.least += least.moved ?? least.atLeast;
          tally.worst = Math.max(tally.worst, own[2] - (least.moved ?? own[2]));
          if (least.moved !== undefined && own[2] > least.moved + 1) line += ' MORE';
          else tally.within += 1;
        }
      }
      console.log(line);
    }
  console.log(
    `${name}: ${tally.within} of ${tally.asked} within one piece of the least; ${tally.moved} moved, least ${tally.least}; worst by ${tally.worst}`,
  );
}
console.log(conditions());
