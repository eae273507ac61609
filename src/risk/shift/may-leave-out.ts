import {
  because,
  boundsOf,
  unitsLeft,
  type Activity,
  type Plan,
  type Worded,
} from '../../model/index.js';
import type { NodeState } from '../limits/cut-offs.js';
import type { HandbackNetwork } from '../handback-network/handback-network.js';
import type { NotOffered } from '../types.js';
import { sayLive } from './live-sentences.js';

/** Repeated work that may stop early: with so few units done in the window at the least. */
export interface StopsEarly {
  readonly activity: string;
  readonly nodes: readonly number[];
  readonly units: number;
  readonly least: number;
  /** Units done by what was recorded. */
  readonly done: number;
  /** The next unit is taken to be under way, though nobody said so. */
  readonly assumed: boolean;
}

/** Work that may wait for another window, with what waits for it and may wait too. */
export interface LeavesOut {
  readonly activity: string;
  readonly with: readonly string[];
}

export interface MayLeaveOut {
  readonly early: readonly StopsEarly[];
  readonly whole: readonly LeavesOut[];
  readonly notOffered: readonly NotOffered[];
}

/** An activity's nodes in the window, first to last. */
export function activitiesOf(built: HandbackNetwork): ReadonlyMap<string, readonly number[]> {
  const found = new Map<string, number[]>();
  built.meanings.forEach(({ activity }, index) => {
    if (activity !== undefined) found.set(activity, [...(found.get(activity) ?? []), index]);
  });
  return found;
}

/**
 * What a shift that runs late may leave out and still hand back a line that is fit: units of repeated work, and work
 * whose row says that it may wait. Never what makes good work that has begun or stays in the shift, and never anything
 * begun that is done in one go. `before`: activities that may have been begun in an earlier shift.
 */
export function mayLeaveOut(
  plan: Plan,
  built: HandbackNetwork,
  states: readonly NodeState[],
  assumed: ReadonlySet<number>,
  before: ReadonlySet<string>,
): MayLeaveOut {
  const nodesOf = activitiesOf(built);
  const rows = new Map(plan.activities.map((activity) => [activity.id, activity]));
  const here = [...nodesOf.keys()].map((id) => rows.get(id)!);
  const begun = new Set(
    here
      .filter(({ id }) => nodesOf.get(id)!.some((index) => states[index] !== 'to-come'))
      .map((activity) => activity.id),
  );
  const left = here.filter(({ id }) => nodesOf.get(id)!.some((index) => states[index] !== 'done'));
  const bindersOf = bindersIn(plan, nodesOf, before);
  const waiting = waitingIn(built, [...nodesOf.keys()]);
  const ask = { begun, bindersOf, waiting };

  const notOffered: NotOffered[] = [];
  const early: StopsEarly[] = [];
  const whole: LeavesOut[] = [];
  for (const activity of left) {
    const nodes = nodesOf.get(activity.id)!;
    if (activity.work.kind === 'units') {
      const stop = stopsEarly(built, activity, nodes, states, assumed);
      if (stop.least >= stop.units) continue;
      const opened = here.filter((item) => leavesOpen(item, activity, ask));
      const why = whyNotUnits(activity, opened, ask);
      // What it pays at a stop makes it safe, but only once it has begun.
      const least = Math.max(stop.least, opened.length > 0 ? 1 : 0);
      if (why !== null) notOffered.push({ activity: activity.id, ...because(why) });
      else if (least < stop.units) early.push({ ...stop, least });
      continue;
    }
    if (begun.has(activity.id)) continue;
    if (!activity.mayWait) continue;
    const group = [activity.id, ...(waiting.get(activity.id) ?? [])];
    const why = whyNotWhole(activity, group, rows, ask);
    if (why === null) whole.push({ activity: activity.id, with: group.slice(1) });
    else notOffered.push({ activity: activity.id, ...because(why) });
  }
  return { early, whole, notOffered };
}

interface Ask {
  readonly begun: ReadonlySet<string>;
  /** By activity: those that it must make good in this window, done in it or before. */
  readonly bindersOf: ReadonlyMap<string, readonly string[]>;
  /** By activity: those of this window that wait for it, directly or through others. */
  readonly waiting: ReadonlyMap<string, readonly string[]>;
}

function bindersIn(
  plan: Plan,
  nodesOf: ReadonlyMap<string, unknown>,
  before: ReadonlySet<string>,
): ReadonlyMap<string, readonly string[]> {
  const found = new Map<string, string[]>();
  const rows = new Map(plan.activities.map((activity) => [activity.id, activity]));
  for (const { activity, members } of boundsOf(plan.activities)) {
    // What was done before this shift and is made good in it binds as what is done here does.
    const done = before.has(activity) || unitsLeft(rows.get(activity)!.work) === 0;
    if (!nodesOf.has(activity) && !done) continue;
    for (const member of members) found.set(member, [...(found.get(member) ?? []), activity]);
  }
  return found;
}

function waitingIn(
  built: HandbackNetwork,
  ids: readonly string[],
): ReadonlyMap<string, readonly string[]> {
  return new Map(
    ids.map((id) => {
      const gone = new Set([id]);
      for (let before = -1; before !== gone.size;) {
        before = gone.size;
        for (const other of ids)
          if ((built.needs.get(other) ?? []).some((need) => gone.has(need))) gone.add(other);
      }
      gone.delete(id);
      return [id, [...gone]];
    }),
  );
}

function stopsEarly(
  built: HandbackNetwork,
  { id }: Activity,
  nodes: readonly number[],
  states: readonly NodeState[],
  assumed: ReadonlySet<number>,
): StopsEarly {
  const units = nodes.filter((index) => built.meanings[index]!.part === 'unit');
  const begun = units.filter((index) => states[index] !== 'to-come' && !assumed.has(index));
  return {
    activity: id,
    nodes,
    units: units.length,
    least: begun.length,
    done: units.filter((index) => states[index] === 'done').length,
    assumed: units.some((index) => assumed.has(index)),
  };
}

/** Whether `one` has begun, nothing says what makes the line good after it, and `other` could be that. */
function leavesOpen(activity: Activity, other: Activity, { begun, waiting }: Ask): boolean {
  return (
    activity.id !== other.id &&
    activity.package === other.package &&
    activity.place === 'inside' &&
    other.place === 'inside' &&
    activity.madeGoodBy === undefined &&
    begun.has(activity.id) &&
    !(waiting.get(other.id) ?? []).includes(activity.id)
  );
}

function whyNotUnits(
  activity: Activity,
  opened: readonly Activity[],
  { bindersOf }: Ask,
): Worded | null {
  const binders = bindersOf.get(activity.id) ?? [];
  if (binders.length > 0) return sayLive('all-must-finish', { name: activity.title, binders });
  // Each stop is made safe where the row pays for that: it says so itself.
  const safe = activity.work.kind === 'units' && activity.work.makeSafeMinutes > 0;
  if (opened.length === 0 || safe) return null;
  return sayLive('begun-and-unsaid', {
    name: activity.title,
    opened: opened.map((item) => item.title),
  });
}

function whyNotWhole(
  activity: Activity,
  group: readonly string[],
  rows: ReadonlyMap<string, Activity>,
  { begun, bindersOf }: Ask,
): Worded | null {
  const stays = group.find((id) => !rows.get(id)!.mayWait || begun.has(id));
  if (stays !== undefined) return sayLive('waits-and-stays', { name: rows.get(stays)!.title });
  const binder = group.flatMap((id) => bindersOf.get(id) ?? []).find((id) => !group.includes(id));
  return binder === undefined
    ? null
    : sayLive('needed-to-make-good', {
        name: activity.title,
        opened: rows.get(binder)!.title,
      });
}
