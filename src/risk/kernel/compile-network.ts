import {
  checkDistribution,
  highOf,
  inverseTable,
  lowOf,
  type Distribution,
} from './distribution.js';
import { forwardLayout, type ForwardLayout } from './forward-layout.js';
import { mostHeld, type WhatIf } from './held-case.js';
import { lengthBounds, type LengthBounds } from './length-bounds.js';
import { OrderSeen, type TickLink } from './order-seen.js';
import { inTicks, sampleWidth, ticksOf } from './sampling.js';
import { topologicalOrder, type RiskNetwork, type RiskNode } from './network.js';

/**
 * A network laid out in flat arrays, nodes renumbered in topological order, so that a run allocates nothing. Times
 * are in ticks of 1/64 minute; tables hold quantiles in ticks.
 */
export interface CompiledNetwork extends LengthBounds {
  readonly size: number;
  /** Index in the network's list of the node at each position. */
  readonly nodeAt: Int32Array;
  /** Length of nodes that draw nothing. */
  readonly base: Int32Array;
  /** Their positions. */
  readonly keptAt: Int32Array;
  readonly release: Int32Array;
  /**
   * Links of the node at position i: `linkFrom[i]` … `linkFrom[i + 1]`; without those that say what the others say
   * already.
   */
  readonly linkFrom: Int32Array;
  /** The position for a start, the position + size for a finish. */
  readonly linkSlot: Int32Array;
  readonly linkLag: Int32Array;
  /** 1 where nothing waits for the node's finish: only such a node can be the last. */
  readonly isLast: Uint8Array;
  /** Position of each drawn node, and its weight of the common factor. */
  readonly drawAt: Int32Array;
  readonly drawWeight: Float64Array;
  readonly drawTable: Float64Array;
  readonly copyFrom: Int32Array;
  readonly copyTo: Int32Array;
  /** Events that lengthen a node: its position, the share of the 2^32 words that are a hit, the delay's table. */
  readonly eventAt: Int32Array;
  readonly eventShare: Float64Array;
  readonly eventTable: Float64Array;
  /** Dated events in time order. `datedStops[k * size + i]` is 1 when event k stops position i. */
  readonly datedAt: Int32Array;
  readonly datedShare: Float64Array;
  readonly datedTable: Float64Array;
  readonly datedStops: Uint8Array;
  readonly factorTable: Float64Array | null;
  /** Closed stretches of position i: `closedFrom[i]` … `closedFrom[i + 1]` in the two lists. */
  readonly closedFrom: Int32Array;
  readonly closedStart: Int32Array;
  readonly closedEnd: Int32Array;
  /** Positions that changes hold, and the most ticks that they hold each at. */
  readonly held: ReadonlyMap<number, number>;
  readonly forward: ForwardLayout;
}

/**
 * The same values in one hidden shape, whatever they were put together of: the runs are the hot part of every answer, and
 * each further shape that they meet has them optimized anew.
 */
export const inOneShape = (all: CompiledNetwork): CompiledNetwork => ({
  least: all.least,
  greatest: all.greatest,
  size: all.size,
  nodeAt: all.nodeAt,
  base: all.base,
  keptAt: all.keptAt,
  release: all.release,
  linkFrom: all.linkFrom,
  linkSlot: all.linkSlot,
  linkLag: all.linkLag,
  isLast: all.isLast,
  drawAt: all.drawAt,
  drawWeight: all.drawWeight,
  drawTable: all.drawTable,
  copyFrom: all.copyFrom,
  copyTo: all.copyTo,
  eventAt: all.eventAt,
  eventShare: all.eventShare,
  eventTable: all.eventTable,
  datedAt: all.datedAt,
  datedShare: all.datedShare,
  datedTable: all.datedTable,
  datedStops: all.datedStops,
  factorTable: all.factorTable,
  closedFrom: all.closedFrom,
  closedStart: all.closedStart,
  closedEnd: all.closedEnd,
  held: all.held,
  forward: all.forward,
});

const WORDS = 4294967296;

/** Distributions that a table can hold: events are drawn apart, as a jump cannot be interpolated. */
function smooth(distribution: Distribution): boolean {
  return (
    distribution.kind !== 'event' &&
    !(distribution.kind === 'remaining' && distribution.of.kind === 'event')
  );
}

/** Units of one piece of work share their length, and a network is compiled for each question. */
const tables = new WeakMap<Distribution, Float64Array>();

function tableOf(distribution: Distribution): Float64Array {
  checkDistribution(distribution);
  if (!smooth(distribution)) throw new RangeError('an event cannot be the length of another event');
  let table = tables.get(distribution);
  if (!table) tables.set(distribution, (table = inTicks(inverseTable(distribution))));
  return table;
}

function joined(tables: readonly Float64Array[]): Float64Array {
  const all = new Float64Array(tables.length * sampleWidth);
  tables.forEach((table, k) => all.set(table, k * sampleWidth));
  return all;
}

interface Events {
  readonly at: number[];
  readonly share: number[];
  readonly tables: Float64Array[];
}

function addEvent(events: Events, at: number, probability: number, delay: Distribution): void {
  checkDistribution({ kind: 'event', probability, delay });
  events.at.push(at);
  events.share.push(probability * WORDS);
  events.tables.push(tableOf(delay));
}

function closedLists(nodes: readonly RiskNode[], nodeAt: Int32Array) {
  const closedFrom = new Int32Array(nodes.length + 1);
  const starts: number[] = [];
  const ends: number[] = [];
  nodeAt.forEach((index, position) => {
    let last = -Infinity;
    for (const { from, to } of nodes[index]!.closed ?? []) {
      if (!(from >= last && to > from && to < Infinity))
        throw new RangeError(`closed stretches of ${nodes[index]!.id} overlap or have no end`);
      starts.push(ticksOf(from));
      ends.push(ticksOf(to));
      last = to;
    }
    closedFrom[position + 1] = starts.length;
  });
  return {
    closedFrom,
    closedStart: Int32Array.from(starts),
    closedEnd: Int32Array.from(ends),
  };
}

function linkLists(nodes: readonly RiskNode[], nodeAt: Int32Array, positionOf: Int32Array) {
  const size = nodes.length;
  const linkFrom = new Int32Array(size + 1);
  const slots: number[] = [];
  const lags: number[] = [];
  const isLast = new Uint8Array(size).fill(1);
  const order = new OrderSeen(size);
  nodeAt.forEach((index, position) => {
    const all = nodes[index]!.after.map((link): TickLink => {
      const slot = positionOf[link.node]! + (link.from === 'finish' ? size : 0);
      return { slot, lag: ticksOf(link.lagMinutes) };
    });
    for (const { slot, lag } of order.needed(position, all)) {
      slots.push(slot);
      lags.push(lag);
    }
    // A follower with a lag below zero may finish first, so its forerunner still counts.
    for (const { slot, lag } of all) if (slot >= size && lag >= 0) isLast[slot - size] = 0;
    linkFrom[position + 1] = slots.length;
  });
  return { linkFrom, linkSlot: Int32Array.from(slots), linkLag: Int32Array.from(lags), isLast };
}

function datedLists(network: RiskNetwork, positionOf: Int32Array) {
  const size = network.nodes.length;
  const inOrder = [...(network.datedEvents ?? [])].sort((a, b) => a.atMinutes - b.atMinutes);
  const dated: Events = { at: [], share: [], tables: [] };
  const datedStops = new Uint8Array(inOrder.length * size);
  inOrder.forEach((event, k) => {
    addEvent(dated, ticksOf(event.atMinutes), event.probability, event.delay);
    if (!event.nodes) datedStops.fill(1, k * size, (k + 1) * size);
    else for (const index of event.nodes) datedStops[k * size + positionOf[index]!] = 1;
  });
  return {
    datedAt: Int32Array.from(dated.at),
    datedShare: Float64Array.from(dated.share),
    datedTable: joined(dated.tables),
    datedStops,
  };
}

/** Everything one after the other, at its longest, must stay within what 32 bits of ticks can hold. */
function checkHorizon(network: RiskNetwork): void {
  const slowest = Math.max(1, network.commonFactor ? highOf(network.commonFactor) : 1);
  let minutes = 0;
  for (const node of network.nodes) {
    minutes += highOf(node.duration) * slowest + Math.max(0, node.releaseMinutes ?? 0);
    for (const link of node.after) minutes += Math.max(0, link.lagMinutes);
    for (const { to } of node.closed ?? []) minutes += Math.max(0, to);
    for (const { delay } of node.events ?? []) minutes += highOf(delay);
  }
  for (const { delay } of network.datedEvents ?? [])
    minutes += highOf(delay) * network.nodes.length;
  ticksOf(minutes);
}

/**
 * @param changes All changes that will be tried on it.
 * @throws {RangeError} When a number, a link or a distribution makes no sense, or nodes wait in a ring.
 */
export function compileNetwork(
  network: RiskNetwork,
  changes: readonly WhatIf[] = [],
): CompiledNetwork {
  const { nodes } = network;
  const nodeAt = topologicalOrder(nodes);
  const positionOf = new Int32Array(nodes.length);
  nodeAt.forEach((index, position) => (positionOf[index] = position));
  const base = new Int32Array(nodes.length);
  const release = new Int32Array(nodes.length);
  const drawAt: number[] = [];
  const drawWeight: number[] = [];
  const tables: Float64Array[] = [];
  const copyFrom: number[] = [];
  const copyTo: number[] = [];
  const events: Events = { at: [], share: [], tables: [] };
  if (network.commonFactor && !(lowOf(network.commonFactor) > 0))
    throw new RangeError('the common factor must stay above 0');
  nodeAt.forEach((index, position) => {
    const node = nodes[index]!;
    const weight = network.commonFactor ? (node.factorWeight ?? 1) : 0;
    if (!(weight >= 0 && weight <= 1))
      throw new RangeError(`factor weight ${weight} of ${node.id}`);
    release[position] = ticksOf(node.releaseMinutes ?? 0);
    checkDistribution(node.duration);
    if (node.sameDurationAs !== undefined) {
      if (node.events?.length) throw new RangeError(`${node.id} takes its events from its twin`);
      copyFrom.push(positionOf[node.sameDurationAs]!);
      copyTo.push(position);
    } else if (node.duration.kind === 'event') {
      addEvent(events, position, node.duration.probability, node.duration.delay);
    } else if (node.duration.kind === 'constant' && weight === 0) {
      base[position] = ticksOf(node.duration.minutes);
    } else {
      drawAt.push(position);
      drawWeight.push(weight);
      tables.push(tableOf(node.duration));
    }
    for (const event of node.events ?? [])
      addEvent(events, position, event.probability, event.delay);
  });
  checkHorizon(network);
  const drawn = new Set(drawAt);
  const closed = closedLists(nodes, nodeAt);
  const dated = datedLists(network, positionOf);
  const lengths = {
    base,
    drawAt: Int32Array.from(drawAt),
    drawWeight: Float64Array.from(drawWeight),
    drawTable: joined(tables),
    copyFrom: Int32Array.from(copyFrom),
    copyTo: Int32Array.from(copyTo),
    eventAt: Int32Array.from(events.at),
    eventShare: Float64Array.from(events.share),
    eventTable: joined(events.tables),
    factorTable: network.commonFactor ? tableOf(network.commonFactor) : null,
  };
  const held = mostHeld({ nodeAt, ...lengths }, changes);
  const compiled = {
    size: nodes.length,
    nodeAt,
    ...lengths,
    ...lengthBounds(lengths),
    keptAt: nodeAt.map((_, position) => position).filter((value) => !drawn.has(value)),
    release,
    ...linkLists(nodes, nodeAt, positionOf),
    ...dated,
    ...closed,
    held,
  };
  return inOneShape({ ...compiled, forward: forwardLayout(compiled, held) });
}
