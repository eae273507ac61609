import { lengthMinutes } from '../../calendar/index.js';
import type { AccessWindow } from '../../model/index.js';
import type { NodeState } from '../limits/cut-offs.js';
import type { HandbackNetwork } from '../handback-network/handback-network.js';
import { activitiesOf } from './may-leave-out.js';
import { forwardPass, type RiskNetwork } from '../kernel/network.js';
import type { WhatIf } from '../kernel/held-case.js';
import { chancesOnTime, type OnTimeRuns } from '../kernel/on-time.js';
import { chanceOf, type Chance } from '../kernel/simulation.js';
import type { UnitChance, UnitOutlook } from '../types.js';

export interface LessWork {
  readonly seed: number;
  readonly runs: number;
  readonly confidence: number;
  /** The chance of handing back on time with all of the work. */
  readonly own: Chance;
  /** How many runs that is of. */
  readonly ownRuns: number;
}

/**
 * Nodes that go when only `keep` units of an activity are done; with none done and nothing begun, its set up and make
 * safe go too. A unit that is only taken to be under way counts as not begun.
 */
export function nodesBeyond(
  built: HandbackNetwork,
  nodes: readonly number[],
  states: readonly NodeState[],
  keep: number,
  assumed: ReadonlySet<number> = new Set(),
): readonly number[] {
  const toCome = (index: number): boolean => states[index] === 'to-come' || assumed.has(index);
  const begun = nodes.some((index) => !toCome(index));
  return nodes.filter((index) => {
    if (!toCome(index)) return false;
    const { part, unit } = built.meanings[index]!;
    return part === 'unit' ? unit! > keep : keep === 0 && !begun;
  });
}

/** These nodes are not done at all. */
export const leftOut = (nodes: ReadonlySet<number>): WhatIf => ({
  held: new Map([...nodes].map((index) => [index, 0] as const)),
  leftOut: true,
});

/**
 * Chance of being on time with each of the sets of nodes left out; with none, the window's own chance.
 *
 * @param known What the runs of these options said of the sets, where it was asked while they were drawn.
 */
export function chancesWithout(
  built: HandbackNetwork,
  window: AccessWindow,
  { seed, runs, own, ownRuns }: LessWork,
  dropped: readonly ReadonlySet<number>[],
  known?: OnTimeRuns,
): readonly Chance[] {
  // Less work is never later with the same draws: where every run is on time with all of it, every run is with less.
  if (own.probability === 1 && ownRuns >= runs)
    return dropped.map((nodes) => (nodes.size === 0 ? own : chanceOf(runs, runs)));
  const options = { seed, runs, deadlineMinutes: lengthMinutes(window) };
  const found = known
    ? known.found(built.network, options)
    : chancesOnTime(built.network, options, dropped.map(leftOut));
  return found.map((onTime, k) => (dropped[k]!.size === 0 ? own : onTime));
}

/**
 * The network with some nodes taking no time and asking for none: no curing before them, no date. They keep their
 * place, so that what follows them on shared plant still follows what came before them.
 */
function without(network: RiskNetwork, nodes: ReadonlySet<number>): RiskNetwork {
  return {
    ...network,
    nodes: network.nodes.map((node, index) => {
      if (!nodes.has(index)) return node;
      const { releaseMinutes: _, closed: __, ...rest } = node;
      return { ...rest, after: node.after.map((link) => ({ ...link, lagMinutes: 0 })) };
    }),
  };
}

/** Margin in minutes with these nodes left out and all else taking its most likely time. */
export function marginWithout(
  built: HandbackNetwork,
  window: AccessWindow,
  nodes: ReadonlySet<number>,
): number {
  const times = forwardPass(without(built.network, nodes).nodes, (index) =>
    nodes.has(index) ? 0 : built.meanings[index]!.minutes,
  );
  return lengthMinutes(window) - times.reduce((latest, item) => Math.max(latest, item.finish), 0);
}

/** A piece of repeated work done with so many units, and the nodes that then go. */
export interface UnitCount {
  readonly activity: string;
  readonly units: number;
  readonly dropped: ReadonlySet<number>;
}

/**
 * For repeated work: 1, 2 … all of the units planned in this window; during the shift from those that are done or recorded
 * as begun.
 */
export function unitCounts(
  built: HandbackNetwork,
  states: readonly NodeState[],
  assumed: ReadonlySet<number>,
): readonly UnitCount[] {
  return [...activitiesOf(built)].flatMap(([activity, nodes]) => {
    const units = nodes.filter((index) => built.meanings[index]!.part === 'unit');
    if (units.length < 2) return [];
    // Units done cannot be undone: the question starts with them.
    const begun = units.filter((index) => states[index] !== 'to-come' && !assumed.has(index));
    const least = Math.max(1, begun.length);
    const counts = Array.from({ length: units.length - least + 1 }, (_, k) => least + k);
    return counts.map((keep) => ({
      activity,
      units: keep,
      dropped: new Set(nodesBeyond(built, nodes, states, keep, assumed)),
    }));
  });
}

/** The chance of handing back on time with each count of units, the counts of one activity next to each other. */
export function unitOutlooks(
  counts: readonly UnitCount[],
  found: readonly Chance[],
  confidence: number,
): readonly UnitOutlook[] {
  const lists = new Map<string, UnitChance[]>();
  counts.forEach(({ activity, units }, k) =>
    lists.set(activity, [...(lists.get(activity) ?? []), { units, onTime: found[k]! }]),
  );
  return [...lists].map(([activity, list]) => {
    const within = list.filter((chance) => chance.onTime.probability >= confidence);
    return { activity, chances: list, unitsWithinConfidence: within.at(-1)?.units ?? 0 };
  });
}
