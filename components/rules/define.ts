import { PossessionRules } from './rules.js';

if (!customElements.get('possession-rules'))
  customElements.define('possession-rules', PossessionRules);

export { PossessionRules };
