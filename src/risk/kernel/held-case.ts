import { ticksOf } from './sampling.js';

/** One change to a network: nodes by index in its list that take these minutes, whatever happens. */
export interface WhatIf {
  readonly held: ReadonlyMap<number, number>;
  /** They are not done at all: held at 0 minutes, no gap before them, no date, though they keep their place in the order. */
  readonly leftOut?: boolean;
}

/** What a change holds, by position in the compiled order and in ticks, and whether that is not done at all. */
export interface HeldCase {
  readonly ticks: ReadonlyMap<number, number>;
  readonly leftOut: boolean;
}

/** Which node stands at each position, and which take the lengths of others. */
interface Placed {
  readonly nodeAt: Int32Array;
  readonly copyFrom: Int32Array;
  readonly copyTo: Int32Array;
}

/** @throws {RangeError} When minutes make no sense, or the network was not compiled for the change. */
export function heldCase(
  network: Placed & { readonly held: ReadonlyMap<number, number> },
  item: WhatIf,
): HeldCase {
  const ticks = heldTicks(network, item);
  for (const [position, own] of ticks)
    if (!(own <= network.held.get(position)!))
      throw new RangeError(`the network was compiled without ${own} ticks at ${position}`);
  return { ticks, leftOut: item.leftOut ?? false };
}

/** Positions that any of the changes hold, and the most ticks that they hold each at. */
export function mostHeld(network: Placed, changes: readonly WhatIf[]): ReadonlyMap<number, number> {
  const most = new Map<number, number>();
  for (const item of changes)
    for (const [position, ticks] of heldTicks(network, item))
      most.set(position, Math.max(ticks, most.get(position) ?? 0));
  return most;
}

/** Positions in the compiled order of what a case holds, twins of a held node with it. */
function heldTicks(
  { nodeAt, copyFrom, copyTo }: Placed,
  { held, leftOut }: WhatIf,
): ReadonlyMap<number, number> {
  const ticks = new Map<number, number>();
  if (held.size === 0) return ticks;
  nodeAt.forEach((index, position) => {
    const minutes = held.get(index);
    if (minutes === undefined) return;
    if (!(minutes >= 0 && minutes < Infinity)) throw new RangeError(`held at ${minutes} minutes`);
    if (leftOut && minutes > 0) throw new RangeError('what is left out takes no minutes');
    ticks.set(position, ticksOf(minutes));
  });
  copyFrom.forEach((from, k) => {
    const own = ticks.get(from);
    if (own !== undefined && !ticks.has(copyTo[k]!)) ticks.set(copyTo[k]!, own);
  });
  return ticks;
}
