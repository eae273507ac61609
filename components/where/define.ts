import { PossessionWhere } from './where.js';

if (!customElements.get('possession-where'))
  customElements.define('possession-where', PossessionWhere);

export { PossessionWhere };
export type { PlacementSelectEvent } from '../plan/placement-select-event.js';
