import { PossessionSheet } from './sheet.js';

if (!customElements.get('possession-sheet'))
  customElements.define('possession-sheet', PossessionSheet);

export { PossessionSheet };
