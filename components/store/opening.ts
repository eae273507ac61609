// What opens plans that this device keeps, and plans of links: loaded beside a page's first paint.
export { PlanStore } from './plan-store.js';
export { readLink } from './read-link.js';
