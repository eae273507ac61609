import { PossessionCompare } from './compare.js';

if (!customElements.get('possession-compare'))
  customElements.define('possession-compare', PossessionCompare);

export { PossessionCompare };
export type { FigureAskEvent } from '../shared/figure-ask-event.js';
