import type { Show } from '../shown.js';

export const show: Show<'possession-lifting'> = async (element, shown) => {
  const { engine, planDocument, plan } = shown;
  element.answer = await engine.lifting(planDocument, { placements: plan.placements });
};
