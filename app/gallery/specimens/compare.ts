import type { Show } from '../shown.js';

export const show: Show<'possession-compare'> = async (element, shown) => {
  const { engine, planDocument, results, plan } = shown;
  element.beforePlan = plan;
  element.afterPlan = await engine.allocate(planDocument, { first: 'fewest-windows' });
  element.beforeName = 'Key dates first';
  element.afterName = 'Fewest windows first';
  element.windows = results.plan.windows;
  element.activities = results.plan.activities;
  element.zone = planDocument.zone;
};
