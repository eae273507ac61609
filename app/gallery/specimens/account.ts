import type { Show } from '../shown.js';

export const show: Show<'possession-account'> = async (element, shown) => {
  const { engine, planDocument, results, plan, accessWindow } = shown;
  element.window = accessWindow;
  element.trains = results.trains.filter((train) => train.window === accessWindow.id);
  element.resources = results.plan.resources;
  element.request = { window: accessWindow.id, actualHandback: accessWindow.end + 75 * 60_000 };
  element.answer = await engine.account(planDocument, {
    ...element.request,
    placements: plan.placements,
  });
};
