import type { Show } from '../shown.js';

export const show: Show<'possession-booking'> = async (element, shown) => {
  const { engine, planDocument, results } = shown;
  element.windows = results.plan.windows;
  element.now = Date.parse('2026-06-01T09:00:00Z');
  element.answer = await engine.book(planDocument, { now: element.now });
};
