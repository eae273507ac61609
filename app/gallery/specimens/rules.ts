import type { Show } from '../shown.js';

export const show: Show<'possession-rules'> = (element, shown) => {
  const { planDocument, results } = shown;
  element.rules = results.plan.rules;
  element.windows = results.plan.windows;
  element.activities = results.plan.activities;
  element.zone = planDocument.zone;
};
