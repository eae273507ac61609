import type { Activity } from '../../../model/index.js';
import { pairedFinishes, type PairedCase, type RiskNode } from '../../../risk/index.js';
import { caseOf, seedOf } from '../costs.js';
import type { Situation } from '../situation.js';

/** When the second and each further unit could begin, in minutes after the window's start, run by run. Null when stopped. */
export function unitStarts(
  at: Situation,
  activity: Activity,
  units: number,
): readonly Float64Array[] | null {
  const whole = caseOf(at.planned, at.risk);
  const cases = Array.from({ length: units - 1 }, (_, k) => {
    const node = whole.built.meanings.findIndex(
      (meaning) =>
        meaning.activity === activity.id && meaning.part === 'unit' && meaning.unit === k + 2,
    );
    return workBefore(whole, node);
  });
  const { runs, shouldStop } = at.risk;
  const found = pairedFinishes([whole, ...cases], {
    seed: seedOf(at.request.seed, at.window.id),
    runs,
    ...(shouldStop && { shouldStop }),
  });
  return found && found.slice(1);
}

/** All that one node waits for, and nothing else: it finishes when the node may begin. */
function workBefore({ network, names }: PairedCase, target: number): PairedCase {
  const wanted = new Set<number>();
  const finishes = new Set<number>();
  const open = [target];
  for (let node = open.pop(); node !== undefined; node = open.pop()) {
    for (const link of network.nodes[node]!.after) {
      if (link.from === 'finish') finishes.add(link.node);
      if (wanted.has(link.node)) continue;
      wanted.add(link.node);
      open.push(link.node);
    }
  }
  const kept = [...wanted].sort((a, b) => a - b);
  const place = new Map(kept.map((node, index) => [node, index]));
  return {
    names: kept.map((node) => (finishes.has(node) ? names[node]! : `${names[node]!} begun`)),
    network: {
      ...network,
      nodes: kept.map((index): RiskNode => {
        const { sameDurationAs: twin, ...node } = network.nodes[index]!;
        const after = node.after.map((link) => ({ ...link, node: place.get(link.node)! }));
        // Only its start is waited for, so its length must not hold anything up.
        if (!finishes.has(index)) {
          const { events: _, ...bare } = node;
          return { ...bare, after, duration: { kind: 'constant', minutes: 0 } };
        }
        const own = twin === undefined ? undefined : place.get(twin);
        return own === undefined
          ? { ...node, after, duration: network.nodes[twin ?? index]!.duration }
          : { ...node, after, sameDurationAs: own };
      }),
    },
  };
}
