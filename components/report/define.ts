import { PossessionReport } from './report.js';

if (!customElements.get('possession-report'))
  customElements.define('possession-report', PossessionReport);

export { PossessionReport };
