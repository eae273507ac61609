import type { Placement, Plan, Proof } from '../../model/index.js';
import { fnv1a64, planId } from '../plan-id.js';
import { canonicalOf } from '../problem/canonical.js';
import { qualityOf } from '../search/certificate.js';
import type { Certificate, Objective } from '../search/types.js';
import { sayOfPlan } from '../plan-sentences.js';

/**
 * A digest of everything that a plan of work hangs on beside its placements, whatever the order of its rows: 16 hexadecimal
 * digits. Any change of a cell that the plan is read from is another digest, one of a title too. No seal against forging.
 */
export function inputsId(plan: Plan): string {
  const { windows, activities, resources, ...rest } = canonicalOf(plan);
  const lines = [...windows, ...activities, ...resources, rest].map(ordered);
  return fnv1a64(new TextEncoder().encode(lines.join('\n')));
}

/** JSON with the keys of every object in one order. */
function ordered(value: unknown): string {
  return JSON.stringify(value, (_, item: unknown) => {
    if (item instanceof Map) return [...item];
    if (item instanceof Set) return [...item];
    if (typeof item !== 'object' || item === null || Array.isArray(item)) return item;
    return Object.fromEntries(Object.entries(item).sort(([a], [b]) => (a < b ? -1 : 1)));
  });
}

/** Whether a proof speaks of exactly these placements in exactly these inputs, with the same aims in the same order. */
export function speaksOf(
  proof: Proof,
  plan: Plan,
  placements: readonly Placement[],
  objectives: readonly Objective[],
): boolean {
  return (
    proof.plan === planId(placements) &&
    proof.objectives.map(({ name }) => name).join() === objectives.join() &&
    proof.inputs === inputsId(plan)
  );
}

/** A certificate with what was proven of the very plan before. One that is at odds with the plan's values is let be. */
export function withProof(certificate: Certificate, proof: Proof): Certificate {
  const known = new Map(proof.objectives.map(({ name, lowerBound }) => [name, lowerBound]));
  if (certificate.objectives.some(({ name, value }) => known.get(name)! > value))
    return certificate;
  const mostPlaced = certificate.mostPlaced || proof.mostPlaced;
  const objectives = certificate.objectives.map((objective) => {
    const lowerBound = mostPlaced
      ? Math.max(objective.lowerBound, known.get(objective.name)!)
      : objective.lowerBound;
    return {
      ...objective,
      lowerBound,
      proven: objective.proven || (mostPlaced && lowerBound === objective.value),
    };
  });
  const [first] = objectives;
  return {
    ...certificate,
    mostPlaced,
    cutShort: proof.cutShort,
    objectives,
    proven: first!.proven,
    lowerBound: first!.lowerBound,
    ...sayOfPlan('given-proven', { known: qualityOf({ mostPlaced, objectives }) }),
  };
}
