import { PossessionLedger } from './ledger.js';

if (!customElements.get('possession-ledger'))
  customElements.define('possession-ledger', PossessionLedger);

export { PossessionLedger };
export type { LedgerAskEvent } from './ledger-ask-event.js';
