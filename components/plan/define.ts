import { PossessionPlan } from './plan.js';

if (!customElements.get('possession-plan'))
  customElements.define('possession-plan', PossessionPlan);

export { PossessionPlan };
export type { FigureAskEvent } from '../shared/figure-ask-event.js';
export type { PlacementMoveEvent } from './placement-move-event.js';
export type { PlacementSelectEvent } from './placement-select-event.js';
