import { PossessionAccount } from './account.js';

if (!customElements.get('possession-account'))
  customElements.define('possession-account', PossessionAccount);

export { PossessionAccount };
export type { AccountAskEvent } from './account-ask-event.js';
export type { ReportAskEvent } from '../report/report-events.js';
