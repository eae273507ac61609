import { PossessionAccount } from './account.js';

if (!customElements.get('possession-account'))
  customElements.define('possession-account', PossessionAccount);

export { PossessionAccount };
