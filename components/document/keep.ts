import type { PlanDocument } from '../../src/model/index.js';
import { PlanStore, type KeptPlan } from '../store/index.js';

/**
 * The plan that this device keeps under a name.
 * @returns The plan, and whether it was there before; else it is made of what `first` reads.
 */
export async function keptUnder(
  name: string,
  first: () => Promise<PlanDocument>,
): Promise<{ readonly plan: KeptPlan; readonly before: boolean }> {
  const store = new PlanStore({ name: `possession-fit/${name}` });
  for (const { id } of await store.list()) {
    const opened = await store.open(id);
    if (opened?.plan) return { plan: opened.plan, before: true };
  }
  return { plan: await store.create(await first()), before: false };
}
