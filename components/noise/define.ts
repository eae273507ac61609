import { PossessionNoise } from './noise.js';

if (!customElements.get('possession-noise'))
  customElements.define('possession-noise', PossessionNoise);

export { PossessionNoise };
export type { LimitsChangeEvent } from '../people/limits-change-event.js';
