export { verify } from './verify.js';
export type { PlacedWork, PlanAnswer, PlanFault } from './types.js';
