import { PossessionWhy } from './why.js';

if (!customElements.get('possession-why')) customElements.define('possession-why', PossessionWhy);

export { PossessionWhy };
export type { WhyLinkEvent } from './why-events.js';
