import { lengthMinutes } from '../calendar/index.js';
import type { AccessWindow } from '../model/index.js';
import type { NodeState } from './cut-offs.js';
import type { HandbackNetwork } from './handback-network/handback-network.js';
import { forwardPass, type RiskNetwork } from './network.js';
import type { Chance } from './simulation.js';
import type { DropOption, UnitChance, UnitOutlook } from './types.js';
import { whatIfs } from './what-ifs.js';

export interface LessWork {
  readonly seed: number;
  readonly runs: number;
  readonly confidence: number;
  /** The chance of handing back on time with all of the work. */
  readonly own: Chance;
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

/** Chance of being on time with each of the sets of nodes left out; with none, the window's own chance. */
function chances(
  built: HandbackNetwork,
  window: AccessWindow,
  { seed, runs, own }: LessWork,
  dropped: readonly ReadonlySet<number>[],
): readonly Chance[] {
  const cases = dropped.map((nodes) => ({
    held: new Map([...nodes].map((index) => [index, 0] as const)),
    leftOut: true,
  }));
  const deadlineMinutes = lengthMinutes(window);
  const found = whatIfs(built.network, { seed, runs, deadlineMinutes }, cases);
  return found.map(({ onTime }, k) => (dropped[k]!.size === 0 ? own : onTime));
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
  options: LessWork,
): readonly UnitOutlook[] {
  const asked = [...activitiesOf(built)].flatMap(([activity, nodes]) => {
    const units = unitNodes(built, nodes);
    if (units.length < 2) return [];
    // Units begun or done cannot be undone: the question starts with them.
    const least = Math.max(1, units.filter((index) => states[index] !== 'to-come').length);
    const counts = Array.from({ length: units.length - least + 1 }, (_, k) => least + k);
    return counts.map((keep) => ({
      activity,
      units: keep,
      dropped: new Set(nodesBeyond(built, nodes, states, keep)),
    }));
  });
  const found = chances(
    built,
    window,
    options,
    asked.map((one) => one.dropped),
  );
  const lists = new Map<string, UnitChance[]>();
  asked.forEach(({ activity, units }, k) =>
    lists.set(activity, [...(lists.get(activity) ?? []), { units, onTime: found[k]! }]),
  );
  return [...lists].map(([activity, list]) => {
    const within = list.filter((one) => one.onTime.probability >= options.confidence);
    return { activity, chances: list, unitsWithinConfidence: within.at(-1)?.units ?? 0 };
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
  options: LessWork,
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
