import { PossessionRibbon } from './ribbon.js';

if (!customElements.get('possession-ribbon'))
  customElements.define('possession-ribbon', PossessionRibbon);

export { PossessionRibbon };
export type { WindowSelectEvent } from './window-select-event.js';
