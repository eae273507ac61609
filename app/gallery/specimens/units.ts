import type { Show } from '../shown.js';

export const show: Show<'possession-units'> = (element, shown) => {
  const { planDocument, results, plan } = shown;
  element.allocation = plan;
  element.windows = results.plan.windows;
  element.activities = results.plan.activities;
  element.zone = planDocument.zone;
};
