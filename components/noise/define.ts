import { PossessionNoise } from './noise.js';

if (!customElements.get('possession-noise'))
  customElements.define('possession-noise', PossessionNoise);

export { PossessionNoise };
