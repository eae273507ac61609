// What opens plans, with the library that merges: loaded where a plan is opened, and not for a page's first paint.
export { OpenPlan } from './open-plan.js';
export { mostUpdateBytes, whatComesIn } from './what-comes-in.js';
