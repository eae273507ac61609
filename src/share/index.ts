export { closings, type Closing } from './closing.js';
export { usualLimits, type Limits } from './limits.js';
export { holdPlan } from './held-plan.js';
export { joinedBy } from './joined.js';
export type { HeldPlan, HoldPlan } from './plan-guard.js';
export { listName, startSharing, type Sharing, type SharingOptions } from './server.js';
export { ShelfError } from './shelf.js';
export { keptTokens, tokensFile, TokensError, type Tokens } from './tokens.js';
