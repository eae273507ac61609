import { PossessionUnits } from './units.js';

if (!customElements.get('possession-units'))
  customElements.define('possession-units', PossessionUnits);

export { PossessionUnits };
