export { FitCheck, type ClaimedFit } from './fit-claim.js';
export { verify } from './verify.js';
export type { PlacedWork, PlanAnswer, PlanFault } from './types.js';
