import { PairVerdict } from '../../fit/index.js';
import type { Results } from '../types.js';
import { FitMemory, type Packed } from './fit-memory.js';

/** Results as they travel to another thread: of each verdict only what is quick to know, by packages, then windows. */
export interface TravellingResults extends Omit<Results, 'fits'> {
  readonly states: Int32Array;
}

export function toTravel(results: Results): TravellingResults {
  const { fits, ...rest } = results;
  return {
    ...rest,
    states: Int32Array.from(fits, (one) => (one as PairVerdict).state),
  };
}

/** Results that came from another thread. Reasons and placements are worked out here, where they are read. */
export function fromTravel({ states, ...rest }: TravellingResults): Results {
  const { plan, packages } = rest;
  const memory = new FitMemory();
  const activities = new Map(plan.activities.map((one) => [one.id, one]));
  const fits = packages.flatMap((summary, row) => {
    if (states.length === 0) return [];
    const packed: Packed = {
      id: summary.id,
      activities: summary.activities.flatMap((id) => activities.get(id) ?? []),
      rowsLeftOut: summary.rowsLeftOut,
    };
    return plan.windows.map((window, column) => {
      const state = states[row * plan.windows.length + column]!;
      return new PairVerdict(summary.id, window.id, state, () =>
        memory.explain(plan, packed, window),
      );
    });
  });
  return { ...rest, fits };
}
