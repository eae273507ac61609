import type { Show } from '../shown.js';

export const show: Show<'possession-where'> = (element, shown) => {
  const { results, plan } = shown;
  element.allocation = plan;
  element.windows = results.plan.windows;
  element.activities = results.plan.activities;
};
