import { lengthMinutes } from '../calendar/index.js';
import type { AccessWindow } from '../model/index.js';
import type { NodeState } from './cut-offs.js';
import type { HandbackNetwork } from './handback-network.js';
import { forwardPass, type RiskNetwork } from './network.js';
import { simulate, type Chance } from './simulation.js';
import type { DropOption, UnitOutlook } from './types.js';

interface WhatIf {
  readonly seed: number;
  readonly runs: number;
  readonly confidence: number;
}

/** An activity's nodes in the window, first to last. */
function activitiesOf(built: HandbackNetwork): ReadonlyMap<string, readonly number[]> {
  const found = new Map<string, number[]>();
  built.meanings.forEach(({ activity }, index) => {
    if (activity !== undefined) found.set(activity, [...(found.get(activity) ?? []), index]);
  });
  return found;
}

/** Nodes that go when only `keep` units of an activity are done; with none, its set up and make safe go too. */
function nodesBeyond(
  built: HandbackNetwork,
  nodes: readonly number[],
  states: readonly NodeState[],
  keep: number,
): readonly number[] {
  const begun = nodes.some((index) => states[index] !== 'to-come');
  return nodes.filter((index) => {
    if (states[index] !== 'to-come') return false;
    const { part, unit } = built.meanings[index]!;
    return part === 'unit' ? unit! > keep : keep === 0 && !begun;
  });
}

const unitNodes = (built: HandbackNetwork, nodes: readonly number[]): readonly number[] =>
  nodes.filter((index) => built.meanings[index]!.part === 'unit');

/**
 * Each count of units is a simulation of its own. Where there are many, they are of fewer runs than the window's, never
 * of fewer than this: a standard error of 1.6 hundredths at most, which is shown beside the chance.
 */
const LEAST_RUNS = 1000;
/** Steps of work that all of them together may simulate before runs are saved. */
const MOST_STEPS = 10_000_000;

function chances(
  built: HandbackNetwork,
  window: AccessWindow,
  options: WhatIf,
  dropped: readonly ReadonlySet<number>[],
): readonly Chance[] {
  const { seed } = options;
  const steps = dropped.length * built.network.nodes.length;
  const fewer = Math.min(options.runs, Math.max(LEAST_RUNS, Math.floor(MOST_STEPS / steps)));
  const deadlineMinutes = lengthMinutes(window);
  return dropped.map((nodes) => {
    // With nothing left out it is the window's own chance, and must read the same.
    const runs = nodes.size === 0 ? options.runs : fewer;
    const fixed = new Map([...nodes].map((index) => [index, 0]));
    return simulate(without(built.network, nodes), { seed, runs, deadlineMinutes, fixed }).deadline!
      .onTime;
  });
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

/** For repeated work: the chance of handing back on time after 1, 2 … all of the units planned in this window. */
export function unitOutlooks(
  built: HandbackNetwork,
  window: AccessWindow,
  states: readonly NodeState[],
  options: WhatIf,
): readonly UnitOutlook[] {
  return [...activitiesOf(built)].flatMap(([activity, nodes]) => {
    const units = unitNodes(built, nodes);
    if (units.length < 2) return [];
    // Units begun or done cannot be undone: the question starts with them.
    const least = Math.max(1, units.filter((index) => states[index] !== 'to-come').length);
    const counts = Array.from({ length: units.length - least + 1 }, (_, k) => least + k);
    const found = chances(
      built,
      window,
      options,
      counts.map((keep) => new Set(nodesBeyond(built, nodes, states, keep))),
    );
    const list = counts.map((count, k) => ({ units: count, onTime: found[k]! }));
    const within = list.filter((one) => one.onTime.probability >= options.confidence);
    return [{ activity, chances: list, unitsWithinConfidence: within.at(-1)?.units ?? 0 }];
  });
}

/** Activities that wait, directly or through others, for the one dropped. Its steps of lead-out stay. */
function waitingFor(built: HandbackNetwork, activity: string): ReadonlySet<string> {
  const gone = new Set([activity]);
  for (let before = -1; before !== gone.size;) {
    before = gone.size;
    built.network.nodes.forEach((_, index) => {
      const own = built.meanings[index]!.activity;
      if (own === undefined || gone.has(own)) return;
      if ((built.needs.get(own) ?? []).some((need) => gone.has(need))) gone.add(own);
    });
  }
  gone.delete(activity);
  return gone;
}

/**
 * What could be left for another window so as to hand back on time: for repeated work the fewest units less that
 * reach the confidence aimed at (or all that are left), for whole work all of it, with what waits for it. Work that has
 * begun and cannot stop between units is not offered.
 */
export function dropOptions(
  built: HandbackNetwork,
  window: AccessWindow,
  states: readonly NodeState[],
  options: WhatIf,
): readonly DropOption[] {
  const activities = activitiesOf(built);
  const all = [...activities].flatMap(([activity, nodes]) => {
    const units = unitNodes(built, nodes);
    const begunUnits = units.filter((index) => states[index] !== 'to-come').length;
    const begun = nodes.some((index) => states[index] !== 'to-come');
    const followers = [...waitingFor(built, activity)];
    const startedFollower = followers.some((one) =>
      activities.get(one)!.some((index) => states[index] !== 'to-come'),
    );
    const after = followers.flatMap((one) => activities.get(one)!);
    const cuts = Array.from(
      { length: Math.max(0, units.length - Math.max(1, begunUnits)) },
      (_, k) => ({
        activity,
        keepUnits: units.length - 1 - k,
        alsoDrops: [] as readonly string[],
        nodes: new Set(nodesBeyond(built, nodes, states, units.length - 1 - k)),
      }),
    );
    if (begun || startedFollower) return cuts;
    return [...cuts, { activity, alsoDrops: followers, nodes: new Set([...nodes, ...after]) }];
  });
  const found = chances(
    built,
    window,
    options,
    all.map((one) => one.nodes),
  );
  const gross = lengthMinutes(window);
  const rated = all.map(({ nodes, ...one }, k): DropOption => {
    const finish = forwardPass(without(built.network, nodes).nodes, (index) =>
      nodes.has(index) ? 0 : built.meanings[index]!.minutes,
    ).reduce((latest, times) => Math.max(latest, times.finish), 0);
    return {
      ...one,
      marginMinutes: gross - finish,
      onTime: found[k]!,
      reachesConfidence: found[k]!.probability >= options.confidence,
    };
  });
  return rated
    .filter((one) => {
      if (one.keepUnits === undefined) return true;
      // Of the cuts of one activity: the smallest that is enough, or else the greatest.
      const cuts = rated.filter((r) => r.activity === one.activity && r.keepUnits !== undefined);
      return one === (cuts.find((cut) => cut.reachesConfidence) ?? cuts.at(-1));
    })
    .sort(
      (a, b) =>
        Number(b.reachesConfidence) - Number(a.reachesConfidence) ||
        a.alsoDrops.length - b.alsoDrops.length ||
        (b.keepUnits ?? -1) - (a.keepUnits ?? -1) ||
        b.onTime.probability - a.onTime.probability,
    );
}
