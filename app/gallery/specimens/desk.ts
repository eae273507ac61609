import type { Show } from '../shown.js';

export const show: Show<'possession-desk'> = async (element, shown) => {
  const { engine, planDocument, limitSets, ruleSets } = shown;
  element.engine = engine;
  element.limitSets = limitSets;
  element.ruleSets = ruleSets;
  await element.adopt(planDocument);
};
