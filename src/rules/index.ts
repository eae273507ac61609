export { barsWork, closedStretches, curfewStretches } from './curfews.js';
export { isolationOpens } from './dead-stretches.js';
export { ledgerOf } from './ledger.js';
export { applies, layOut, type PlacedStep } from './steps.js';
export type { Ledger, LedgerKind, LedgerRow } from './types.js';
export { workSpanOf, minutesAfterWork, stopsOfWork, usableTime } from './usable-time.js';
