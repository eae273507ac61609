import { PossessionCompare } from './compare.js';

if (!customElements.get('possession-compare'))
  customElements.define('possession-compare', PossessionCompare);

export { PossessionCompare };
