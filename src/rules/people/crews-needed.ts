import { lengthMinutes, MINUTE, type Interval } from '../../calendar/index.js';
import type { ShiftRule } from '../../model/index.js';

/** Who works when in a window that is longer than one turn. */
export interface CrewPlan {
  /** Crews needed to man every minute. */
  readonly crews: number;
  /** Back to back, in time order, `crew` counted from 1. */
  readonly turns: readonly (Interval & { readonly crew: number })[];
  /** Minutes of the turns that go on handing over: the last of every turn but the final one, as in the ledger. */
  readonly changeoverMinutes: number;
}

/**
 * How many crews a window needs so that it is manned throughout, no turn is longer than `longestMinutes` and every
 * crew rests `restMinutes` between turns.
 *
 * Full turns back to back, in elapsed minutes, the last one short; handing over takes the last
 * minutes of a turn. With full
 * turns each crew is back latest, so no other division needs fewer crews. An empty window needs none.
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
