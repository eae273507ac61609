import { lengthMinutes, MINUTE, type Interval } from '../../calendar/index.js';
import type { ShiftRule } from '../../model/index.js';

/** Which crew works when in a window longer than one turn. */
export interface CrewPlan {
  /** Crews needed so that every minute is covered. */
  readonly crews: number;
  /** Back to back, in time order, `crew` counted from 1. */
  readonly turns: readonly (Interval & { readonly crew: number })[];
  /** Total changeover minutes: the last minutes of every turn but the final one, as in the ledger. */
  readonly changeoverMinutes: number;
}

/**
 * How many crews a window needs so that it is always covered, no turn is longer than `longestMinutes` and every crew
 * rests `restMinutes` between turns.
 *
 * Full turns back to back, in elapsed minutes, the last one short; changeover takes the last minutes of a turn. Full
 * turns bring each crew back as late as possible, so no other division needs fewer crews. An empty window needs none.
 */
export function crewsNeeded(window: Interval, shift: ShiftRule): CrewPlan {
  const gross = lengthMinutes(window);
  const { longestMinutes, restMinutes, changeoverMinutes } = shift;
  const count = Math.ceil(gross / longestMinutes);
  // A crew that starts turn k may start again once its own turn and its rest are over.
  const apart = 1 + Math.ceil(restMinutes / longestMinutes);
  const crews = Math.min(count, apart);
  const turns = Array.from({ length: count }, (_, k) => ({
    start: window.start + k * longestMinutes * MINUTE,
    end: Math.min(window.end, window.start + (k + 1) * longestMinutes * MINUTE),
    crew: (k % crews) + 1,
  }));
  return { crews, turns, changeoverMinutes: Math.max(0, count - 1) * changeoverMinutes };
}
