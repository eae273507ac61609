import type { Distribution } from './distribution.js';

/** A node waits for another's finish or start, and then `lagMinutes` more. */
export interface RiskLink {
  readonly node: number;
  readonly from: 'finish' | 'start';
  readonly lagMinutes: number;
}

/** A stretch of minutes, half-open. */
export interface ClosedStretch {
  readonly from: number;
  readonly to: number;
}

/** One thing that takes time. Minutes are counted from the network's own zero. */
export interface RiskNode {
  readonly id: string;
  readonly duration: Distribution;
  /** By index in the network's list. Precedence and the planned order on shared plant alike. */
  readonly after: readonly RiskLink[];
  /** Not before this minute; absent: 0. */
  readonly releaseMinutes?: number;
  /**
   * Stretches in which the node may not run, in order and apart. It is never split: one that would run into a closed
   * stretch waits until it is over. After the last all time is open.
   */
  readonly closed?: readonly ClosedStretch[];
  /** Takes whatever this other node took, as the same physical thing seen twice; `duration` is then not used. */
  readonly sameDurationAs?: number;
  /** How much of the common factor it feels, 0 … 1; absent: 1. */
  readonly factorWeight?: number;
  /** Things that may lengthen it, each on its own. */
  readonly events?: readonly { readonly probability: number; readonly delay: Distribution }[];
}

/** Something that may happen at a moment and stops all work that is then running, or about to start, for its delay. */
export interface DatedEvent {
  readonly atMinutes: number;
  readonly probability: number;
  readonly delay: Distribution;
  /** Indices of the nodes it stops; absent: all. */
  readonly nodes?: readonly number[];
}

/** Work with its order and its uncertainty: what a simulation runs over. */
export interface RiskNetwork {
  readonly nodes: readonly RiskNode[];
  readonly datedEvents?: readonly DatedEvent[];
  /**
   * A shared cause (weather, ground, a slow gang): drawn once a run; a node of weight w takes 1 + w (factor - 1) times
   * its minutes. A distribution around 1, e.g. triangular 0.9, 1, 1.3.
   */
  readonly commonFactor?: Distribution;
}

/** A node's place: minutes from the network's zero. */
export interface NodeTimes {
  readonly start: number;
  readonly finish: number;
}

/**
 * Indices so that every node comes after what it waits for; otherwise in the given order.
 *
 * @throws {RangeError} When a link names no node, or nodes wait for each other in a ring.
 */
export function topologicalOrder(nodes: readonly RiskNode[]): Int32Array {
  const waits = new Int32Array(nodes.length);
  const next: number[][] = nodes.map(() => []);
  nodes.forEach((node, index) => {
    const needs = node.after.map((link) => link.node);
    if (node.sameDurationAs !== undefined) needs.push(node.sameDurationAs);
    for (const need of needs) {
      if (!nodes[need])
        throw new RangeError(`node ${node.id} waits for node ${need}, which is not there`);
      next[need]!.push(index);
      waits[index]! += 1;
    }
  });
  const order = new Int32Array(nodes.length);
  const placed = new Uint8Array(nodes.length);
  let count = 0;
  // Mostly one pass, as callers list work in order; each further pass places at least one node or there is a ring.
  for (let before = -1; count < nodes.length && before !== count;) {
    before = count;
    for (let index = 0; index < nodes.length; index += 1) {
      if (placed[index] || waits[index]! > 0) continue;
      placed[index] = 1;
      order[count] = index;
      count += 1;
      for (const follower of next[index]!) waits[follower]! -= 1;
    }
  }
  if (count < nodes.length) {
    const ring = nodes.filter((_, index) => !placed[index]).map((node) => node.id);
    throw new RangeError(`these wait for each other in a ring: ${ring.join(', ')}`);
  }
  return order;
}

/** The first moment from `ready` on at which `minutes` fit between the closed stretches. */
export function earliestStart(
  closed: readonly ClosedStretch[],
  ready: number,
  minutes: number,
): number {
  if (minutes === 0) return ready;
  let start = ready;
  for (const stretch of closed) {
    if (start < stretch.to && start + minutes > stretch.from) start = stretch.to;
  }
  return start;
}

/** The last moment from which `minutes` fit between the closed stretches and end by `by`. May lie before zero. */
export function latestStart(closed: readonly ClosedStretch[], by: number, minutes: number): number {
  let start = by - minutes;
  if (minutes === 0) return start;
  for (let k = closed.length - 1; k >= 0; k -= 1) {
    const stretch = closed[k]!;
    if (start < stretch.to && start + minutes > stretch.from) start = stretch.from - minutes;
  }
  return start;
}

/** Every node's start and finish when each takes the given minutes and nothing happens: the forward pass. */
export function forwardPass(
  nodes: readonly RiskNode[],
  minutes: (index: number) => number,
): readonly NodeTimes[] {
  const times: NodeTimes[] = new Array<NodeTimes>(nodes.length);
  for (const index of topologicalOrder(nodes)) {
    const node = nodes[index]!;
    let ready = node.releaseMinutes ?? 0;
    for (const link of node.after)
      ready = Math.max(ready, times[link.node]![link.from] + link.lagMinutes);
    const start = earliestStart(node.closed ?? [], ready, minutes(index));
    times[index] = { start, finish: start + minutes(index) };
  }
  return times;
}

/**
 * Every node's latest start and finish so that all is finished by `by`, when each takes the given minutes: the
 * backward pass.
 *
 * @param after Minutes kept free between a node's own finish and `by`, beside what follows it; absent: none.
 */
export function backwardPass(
  nodes: readonly RiskNode[],
  minutes: (index: number) => number,
  by: number,
  after: (index: number) => number = () => 0,
): readonly NodeTimes[] {
  const latestFinish = Float64Array.from(nodes, (_, index) => by - after(index));
  const startBy = new Float64Array(nodes.length).fill(Infinity);
  const times: NodeTimes[] = new Array<NodeTimes>(nodes.length);
  for (const index of topologicalOrder(nodes).reverse()) {
    const node = nodes[index]!;
    const fits = latestStart(node.closed ?? [], latestFinish[index]!, minutes(index));
    const start =
      startBy[index]! < fits
        ? latestStart(node.closed ?? [], startBy[index]! + minutes(index), minutes(index))
        : fits;
    times[index] = { start, finish: start + minutes(index) };
    for (const link of node.after) {
      const limit = start - link.lagMinutes;
      if (link.from === 'start') startBy[link.node] = Math.min(startBy[link.node]!, limit);
      else latestFinish[link.node] = Math.min(latestFinish[link.node]!, limit);
    }
  }
  return times;
}
