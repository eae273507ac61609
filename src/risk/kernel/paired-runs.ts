import { compileNetwork } from './compile-network.js';
import type { Distribution } from './distribution.js';
import type { RiskNetwork, RiskNode } from './network.js';
import { randomState } from './random.js';
import { runBlock, runSpace } from './run-block.js';
import { BLOCK, TICKS } from './sampling.js';

/** One of several ways to do the same work. */
export interface PairedCase {
  readonly network: RiskNetwork;
  /** What each node stands for, by index: nodes of the same name in two cases draw the same in the same run. */
  readonly names: readonly string[];
}

interface Draw {
  readonly name: string;
  readonly events: NonNullable<RiskNode['events']>;
}

/** So little above a fixed length that it rounds away: a node must draw its word whether or not it varies. */
const SLIVER = 1e-6;

/**
 * When each case finishes, in minutes, run by run: run i draws the same in every case, whatever its nodes are and
 * wherever they stand. `simulate` pairs only what-ifs on one and the same network.
 *
 * Lengths are drawn by name, in the order of the first case and then of what later cases add, and the generator starts
 * anew at each block: so the first case finishes alike whatever it is held against.
 *
 * @returns One list a case; null when stopped.
 * @throws {RangeError} When there are not as many names as nodes, or a network makes no sense.
 */
export function pairedFinishes(
  cases: readonly PairedCase[],
  options: { readonly seed: number; readonly runs: number; readonly shouldStop?: () => boolean },
): readonly Float64Array[] | null {
  const { seed, runs, shouldStop } = options;
  const draws = drawsOf(cases);
  const found: Float64Array[] = [];
  for (const item of cases) {
    const compiled = compileNetwork(headed(item, draws));
    // Which node decided the finish is not asked here.
    const space = { ...runSpace(compiled, randomState(seed), runs), criticalEvery: Infinity };
    for (let from = 0; from < runs; from += BLOCK) {
      if (shouldStop?.()) return null;
      space.state.set(randomState(blockSeed(seed, from / BLOCK)));
      runBlock(compiled, space, from, Math.min(BLOCK, runs - from));
    }
    found.push(Float64Array.from(space.finishes, (ticks) => ticks / TICKS));
  }
  return found;
}

const blockSeed = (seed: number, block: number): number => (seed % 2_147_483_648) * 65_536 + block;

function drawsOf(cases: readonly PairedCase[]): readonly Draw[] {
  const known = new Map<string, Draw>();
  for (const { network, names } of cases) {
    if (names.length !== network.nodes.length)
      throw new RangeError(`${names.length} names for ${network.nodes.length} nodes`);
    network.nodes.forEach((node, index) => {
      const name = names[index]!;
      const before = known.get(name);
      const events = node.events ?? [];
      if (!before || before.events.length < events.length) known.set(name, { name, events });
    });
  }
  return [...known.values()];
}

/** The case with a node ahead for each name, which draws; its own nodes take what those drew. */
function headed({ network, names }: PairedCase, draws: readonly Draw[]): RiskNetwork {
  const owner = new Map<string, RiskNode>();
  network.nodes.forEach((node, index) => {
    const name = names[index]!;
    if (node.sameDurationAs === undefined && !owner.has(name)) owner.set(name, node);
  });
  const placeOf = new Map(draws.map((draw, place) => [draw.name, place]));
  const shift = draws.length;
  const heads = draws.map(({ name, events }): RiskNode => {
    const node = owner.get(name);
    return {
      id: name,
      after: [],
      duration: drawn(node?.duration ?? { kind: 'constant', minutes: 0 }),
      ...(node?.factorWeight !== undefined && { factorWeight: node.factorWeight }),
      events: events.map(
        (_, k) =>
          node?.events?.[k] ?? { probability: 0, delay: { kind: 'constant', minutes: 0 } as const },
      ),
    };
  });
  const own = network.nodes.map((node, index): RiskNode => {
    const { events: _, ...rest } = node;
    return {
      ...rest,
      sameDurationAs: placeOf.get(names[index]!)!,
      after: node.after.map((link) => ({ ...link, node: link.node + shift })),
    };
  });
  return {
    ...network,
    nodes: [...heads, ...own],
    ...(network.datedEvents && {
      datedEvents: network.datedEvents.map((event) => ({
        ...event,
        nodes: (event.nodes ?? network.nodes.map((_, index) => index)).map(
          (index) => index + shift,
        ),
      })),
    }),
  };
}

function drawn(distribution: Distribution): Distribution {
  if (distribution.kind !== 'constant') return distribution;
  const { minutes } = distribution;
  return { kind: 'triangular', low: minutes, likely: minutes, high: minutes + SLIVER };
}
