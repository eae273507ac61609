import type { Plan } from '../model/index.js';
import type { Allocation } from '../planner/search/types.js';
import { inputsId } from '../planner/given/proof.js';
import { verify } from '../verify/index.js';

/** A plan of work with what the independent check found of it and of all that is claimed of it. */
export function checked(plan: Plan, found: Allocation): Allocation {
  const faults = verify(plan, found);
  return {
    ...found,
    certificate: {
      ...found.certificate,
      verified: faults.length === 0,
      faults,
      inputs: inputsOf(plan),
    },
  };
}

const known = new WeakMap<Plan, string>();

/** The digest of a plan, which is never changed in place: worked out once. */
function inputsOf(plan: Plan): string {
  let id = known.get(plan);
  if (id === undefined) known.set(plan, (id = inputsId(plan)));
  return id;
}
