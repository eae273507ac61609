import type { Show } from '../shown.js';

export const show: Show<'possession-noise'> = async (element, shown) => {
  const { engine, planDocument, accessWindow } = shown;
  element.answer = await engine.noise(planDocument, { now: accessWindow.start });
};
