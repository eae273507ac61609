export { barsWork, closedStretches, curfewStretches } from './curfews.js';
export { isolationTimes, type IsolationTimes } from './isolation.js';
export { ledgerOf } from './ledger.js';
export { applies, layOut, type PlacedStep } from './steps.js';
export type { Ledger, LedgerKind, LedgerRow } from './types.js';
