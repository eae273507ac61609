import { PossessionPlan } from './plan.js';

if (!customElements.get('possession-plan'))
  customElements.define('possession-plan', PossessionPlan);

export { PossessionPlan };
