import { PossessionFit } from './fit.js';

if (!customElements.get('possession-fit')) customElements.define('possession-fit', PossessionFit);

export { PossessionFit };
export type { FitSelectEvent } from './fit-select-event.js';
