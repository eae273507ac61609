/** The searches, in a module of their own so that they can be loaded when first asked for. */
export { allocate, replan, shortNotice } from '../planner/search/index.js';
