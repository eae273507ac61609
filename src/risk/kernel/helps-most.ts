import { highOf, lowOf } from './distribution.js';
import type { RiskNetwork } from './network.js';
import { whatIfs, type WhatIfOptions } from './what-ifs.js';

/** What holding some nodes at their least lengths would bring. */
export interface Help {
  /** Its index in the list of groups. */
  readonly group: number;
  /** Rise of P(on time). */
  readonly probabilityGain: number;
  /** Minutes by which the mean finish comes forward. */
  readonly meanGainMinutes: number;
}

/** Minutes between a node's least and greatest length, its events counted. */
function reachOf(network: RiskNetwork, index: number): number {
  const node = network.nodes[index]!;
  const events = (node.events ?? []).reduce(
    (sum, event) => sum + event.probability * highOf(event.delay),
    0,
  );
  return highOf(node.duration) - lowOf(node.duration) + events;
}

/**
 * Which group of nodes (all units of one piece of work, one step wherever it stands), held at its least length, helps
 * most: most helpful first.
 *
 * Compared run by run on the same random words, so small gains show. Only the `candidates` groups that were critical
 * most often, weighed by their spread, are tried.
 */
export function helpsMost(
  network: RiskNetwork,
  options: WhatIfOptions,
  criticality: Float64Array,
  groups: readonly (readonly number[])[],
  candidates = 8,
): readonly Help[] {
  const tried = groups
    .map((nodes, group) => {
      const own = nodes.filter((index) => network.nodes[index]!.sameDurationAs === undefined);
      // A step that stands in several places is critical where any of them is.
      const critical = (index: number): number =>
        network.nodes.reduce(
          (most, node, other) =>
            node.sameDurationAs === index ? Math.max(most, criticality[other]!) : most,
          criticality[index]!,
        );
      const reach = own.reduce((sum, index) => sum + critical(index) * reachOf(network, index), 0);
      const held = new Map(own.map((index) => [index, lowOf(network.nodes[index]!.duration)]));
      return { group, reach, held };
    })
    .filter(({ reach }) => reach > 0)
    .sort((a, b) => b.reach - a.reach || a.group - b.group)
    .slice(0, candidates);
  const [base, ...found] = whatIfs(network, options, [{ held: new Map() }, ...tried]);
  return tried
    .map(({ group }, k) => ({
      group,
      probabilityGain: found[k]!.onTime.probability - base!.onTime.probability,
      meanGainMinutes: base!.meanMinutes - found[k]!.meanMinutes,
    }))
    .sort((a, b) => b.probabilityGain - a.probabilityGain || b.meanGainMinutes - a.meanGainMinutes);
}
