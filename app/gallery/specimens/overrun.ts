import type { Show } from '../shown.js';

export const show: Show<'possession-overrun'> = async (element, shown) => {
  const { engine, planDocument, plan, accessWindow } = shown;
  element.window = accessWindow;
  element.overrunMinutes = 60;
  element.editable = true;
  element.answer = await engine.price(planDocument, {
    window: accessWindow.id,
    overrunMinutes: 60,
    maxMinutes: 360,
    placements: plan.placements,
  });
};
