import type { Decisions } from './decisions.js';

/** Nothing to decide. */
export const noDecisions: Decisions = { commitments: [], goPoints: [] };
