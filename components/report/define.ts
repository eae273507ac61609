import { PossessionReport } from './report.js';

if (!customElements.get('possession-report'))
  customElements.define('possession-report', PossessionReport);

export { PossessionReport };
export type { ReportCloseEvent } from './report-events.js';
export type { ReportSaveEvent } from './report-events.js';
