import type { Proof } from '../../model/index.js';
import { planId } from '../plan-id.js';
import type { Allocation } from '../search/types.js';

/** What is known of a plan that was checked, to be kept with it; undefined where that is nothing. */
export function proofOf({ placements, certificate }: Allocation): Proof | undefined {
  const { inputs, verified, holds, mostPlaced, cutShort, objectives } = certificate;
  if (inputs === undefined || !verified || !holds || placements.length === 0) return undefined;
  return {
    plan: planId(placements),
    inputs,
    mostPlaced,
    cutShort,
    objectives: objectives.map(({ name, lowerBound }) => ({ name, lowerBound })),
  };
}
