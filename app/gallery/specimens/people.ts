import type { Show } from '../shown.js';

export const show: Show<'possession-people'> = async (element, shown) => {
  const { engine, planDocument, results, limitSets } = shown;
  element.windows = results.plan.windows;
  element.sets = limitSets;
  element.mendable = true;
  element.answer = await engine.people(planDocument, {});
};
