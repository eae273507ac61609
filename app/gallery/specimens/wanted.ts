import type { Show } from '../shown.js';

export const show: Show<'possession-wanted'> = (element, shown) => {
  const { planDocument, results, plan } = shown;
  element.allocation = plan;
  element.activities = results.plan.activities;
  element.resources = results.plan.resources;
  element.zone = planDocument.zone;
};
