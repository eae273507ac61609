import { PossessionHandback } from './handback.js';

if (!customElements.get('possession-handback'))
  customElements.define('possession-handback', PossessionHandback);

export { PossessionHandback };
