import { highOf, lowOf } from './distribution.js';
import type { CompiledNetwork } from './compile-network.js';
import type { WhatIf } from './held-case.js';
import type { RiskNetwork } from './network.js';
import type { RunSpace } from './run-space.js';
import { WhatIfRuns, whatIfs, type WhatIfFigures, type WhatIfOptions } from './what-ifs.js';

/** What holding some nodes at their least lengths would bring. */
export interface Help {
  /** Its index in the list of groups. */
  readonly group: number;
  /** Rise of P(on time). */
  readonly probabilityGain: number;
  /** Minutes by which the mean finish comes forward. */
  readonly meanGainMinutes: number;
}

/** Minutes between a node's least length and its greatest by a slow factor, its events counted. */
function reachOf(network: RiskNetwork, index: number): number {
  const node = network.nodes[index]!;
  const events = (node.events ?? []).reduce(
    (sum, event) => sum + event.probability * highOf(event.delay),
    0,
  );
  const slowest = network.commonFactor ? highOf(network.commonFactor) : 1;
  return Math.max(0, highOf(node.duration) * slowest - lowOf(node.duration)) + events;
}

/** How many groups are tried at most. */
const MOST_TRIED = 8;

/** The nodes of a group by themselves that vary, each held at its least length. */
function leastOf(network: RiskNetwork, group: readonly number[]): WhatIf {
  const own = group.filter((index) => {
    const { sameDurationAs, duration, events } = network.nodes[index]!;
    const isFixed = duration.kind === 'constant' && !events?.length && !network.commonFactor;
    return sameDurationAs === undefined && !isFixed;
  });
  return { held: new Map(own.map((index) => [index, lowOf(network.nodes[index]!.duration)])) };
}

/** A group that may be tried, and how. */
interface Tried {
  readonly group: number;
  readonly least: WhatIf;
}

/**
 * The last group first: what a group moves is then mostly moved by the next as well, and need not be taken back between
 * the two.
 */
const lastFirst = (a: { readonly group: number }, b: { readonly group: number }): number =>
  b.group - a.group;

/** All groups that may be tried; null where they are more than are tried. */
export function triedGroups(
  network: RiskNetwork,
  groups: readonly (readonly number[])[],
): readonly Tried[] | null {
  const tried = groups
    .map((nodes, group) => ({ group, least: leastOf(network, nodes) }))
    .filter(({ least }) => [...least.held.keys()].some((index) => reachOf(network, index) > 0))
    .sort(lastFirst);
  return tried.length > MOST_TRIED ? null : tried;
}

/** So many runs without a late one, and it is taken that none will be: nothing helps then. */
const LOOKED_AT = 1024;

/**
 * All groups that may be tried, on runs that somebody draws: so the runs need not be drawn again once it is known which
 * groups were critical.
 */
export class HelpRuns {
  readonly #groups: readonly number[];
  readonly #tried: WhatIfRuns;
  #isGivenUp = false;

  constructor(compiled: CompiledNetwork, tried: readonly Tried[], deadlineMinutes: number) {
    this.#groups = tried.map(({ group }) => group);
    const cases = tried.map(({ least }) => least);
    this.#tried = new WhatIfRuns(compiled, [asItIs, ...cases], deadlineMinutes);
  }

  /** @param space Its times are those of all lengths as drawn; both are changed, and nobody may need them again. */
  take(space: RunSpace, offset: number, lanesUsed: number): void {
    if (this.#isGivenUp) return;
    this.#tried.take(space, offset, lanesUsed);
    if (this.#tried.runs === LOOKED_AT)
      this.#isGivenUp = this.#tried.figures()[0]!.onTime.probability === 1;
  }

  /** Whether not all runs were taken, as none seemed to be late. */
  get isGivenUp(): boolean {
    return this.#isGivenUp;
  }

  /** The figures of the network as it is, and of these groups. */
  figures(groups: readonly number[]): readonly WhatIfFigures[] {
    const [base, ...found] = this.#tried.figures();
    return [base!, ...groups.map((group) => found[this.#groups.indexOf(group)]!)];
  }
}

const asItIs: WhatIf = { held: new Map() };

/**
 * Which group of nodes (all units of one piece of work, one step wherever it stands), held at its least length, helps
 * most: most helpful first.
 *
 * Compared run by run on the same random words, so small gains show. Only the eight groups that were critical most
 * often, weighed by their spread, are tried.
 *
 * @param known What all runs of these options said of the groups, where it was asked while they were drawn.
 */
export function helpsMost(
  network: RiskNetwork,
  options: WhatIfOptions,
  criticality: Float64Array,
  groups: readonly (readonly number[])[],
  known?: HelpRuns | null,
): readonly Help[] {
  const tried = groups
    .map((nodes, group) => {
      const { held } = leastOf(network, nodes);
      // A step that stands in several places is critical where any of them is.
      const critical = (index: number): number =>
        network.nodes.reduce(
          (most, node, other) =>
            node.sameDurationAs === index ? Math.max(most, criticality[other]!) : most,
          criticality[index]!,
        );
      const reach = [...held.keys()].reduce(
        (sum, index) => sum + critical(index) * reachOf(network, index),
        0,
      );
      return { group, reach, held };
    })
    .filter(({ reach }) => reach > 0)
    .sort((a, b) => b.reach - a.reach || a.group - b.group)
    .slice(0, MOST_TRIED);
  const asked = [...tried].sort(lastFirst);
  const [base, ...found] =
    known?.figures(asked.map(({ group }) => group)) ??
    whatIfs(network, options, [asItIs, ...asked]);
  const figures = new Map(asked.map(({ group }, k) => [group, found[k]!]));
  return tried
    .map(({ group }) => {
      const { onTime, meanMinutes } = figures.get(group)!;
      return {
        group,
        probabilityGain: onTime.probability - base!.onTime.probability,
        meanGainMinutes: base!.meanMinutes - meanMinutes,
      };
    })
    .sort((a, b) => b.probabilityGain - a.probabilityGain || b.meanGainMinutes - a.meanGainMinutes);
}
