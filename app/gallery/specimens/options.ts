import type { Show } from '../shown.js';

export const show: Show<'possession-options'> = async (element, shown) => {
  const { engine, planDocument, results, plan, accessWindow } = shown;
  element.window = accessWindow;
  element.activities = results.plan.activities;
  element.resources = results.plan.resources;
  element.answer = await engine.options(planDocument, {
    window: accessWindow.id,
    allocation: plan,
    seed: 1,
    runs: 2000,
  });
};
