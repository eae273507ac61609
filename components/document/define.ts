import { PossessionDocument } from './document.js';

if (!customElements.get('possession-document'))
  customElements.define('possession-document', PossessionDocument);

export { PossessionDocument };
export type { DocumentChangeEvent } from './document-change-event.js';
export type { DocumentReadEvent } from './document-read-event.js';
export { documentContext } from './document-state.js';
export type { DocumentState, Wanted } from './document-state.js';
