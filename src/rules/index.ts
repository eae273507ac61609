export { ledgerOf } from './ledger.js';
export { applies, layOut, type PlacedStep } from './steps.js';
export type { Ledger, LedgerKind, LedgerRow } from './types.js';
