import { PossessionRibbon } from './ribbon.js';

if (!customElements.get('possession-ribbon'))
  customElements.define('possession-ribbon', PossessionRibbon);

export { PossessionRibbon };
