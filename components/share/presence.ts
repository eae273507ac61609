import * as z from 'zod/mini';
import { longestName } from './share-state.js';

// Who is here, and what they are at. A name is what a person wrote: it proves nothing.

const placeSchema = z.object({
  table: z.string().check(z.maxLength(40)),
  /** Row of the table, from 0. */
  row: z.int().check(z.gte(0), z.lte(1_000_000)),
  column: z.int().check(z.gte(0), z.lte(10_000)),
});

const presenceSchema = z.object({
  name: z.string().check(z.maxLength(longestName)),
  /** Id of the view that is open. */
  view: z.string().check(z.maxLength(40)),
  cell: z.optional(placeSchema),
  /** Whether they can change nothing. */
  reads: z.optional(z.boolean()),
});

/** A cell that somebody is at. */
export type CellPlace = z.infer<typeof placeSchema>;

/** What a desk says of the person at it. */
export type Presence = z.infer<typeof presenceSchema>;

/** Somebody else who is here. */
export interface Other extends Presence {
  /** Number of their desk, as long as it is open. */
  readonly desk: number;
}

const mostOthers = 200;

/** The others among what desks said of themselves; what is not formed as it should be is left out. */
export function othersIn(states: ReadonlyMap<number, unknown>, own: number): readonly Other[] {
  const others: Other[] = [];
  for (const [desk, state] of states) {
    if (desk === own || others.length === mostOthers) continue;
    const said = presenceSchema.safeParse((state as { here?: unknown } | null)?.here);
    if (said.success) others.push({ desk, ...said.data });
  }
  return others.sort((a, b) => a.name.localeCompare(b.name) || a.desk - b.desk);
}
