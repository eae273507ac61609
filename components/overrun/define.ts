import { PossessionOverrun } from './overrun.js';

if (!customElements.get('possession-overrun'))
  customElements.define('possession-overrun', PossessionOverrun);

export { PossessionOverrun };
