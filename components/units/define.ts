import { PossessionUnits } from './units.js';

if (!customElements.get('possession-units'))
  customElements.define('possession-units', PossessionUnits);

export { PossessionUnits };
export type { FigureAskEvent } from '../shared/figure-ask-event.js';
export type { UnitsSelectEvent } from './units-select-event.js';
