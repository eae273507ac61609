import { PossessionOptions } from './options.js';

if (!customElements.get('possession-options'))
  customElements.define('possession-options', PossessionOptions);

export { PossessionOptions };
