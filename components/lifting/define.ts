import { PossessionLifting } from './lifting.js';

if (!customElements.get('possession-lifting'))
  customElements.define('possession-lifting', PossessionLifting);

export { PossessionLifting };
export type { LimitsChangeEvent } from '../people/limits-change-event.js';
