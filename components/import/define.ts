import { PossessionImport } from './import.js';

if (!customElements.get('possession-import'))
  customElements.define('possession-import', PossessionImport);

export { PossessionImport };
export type { ImportAcceptEvent } from './import-accept-event.js';
