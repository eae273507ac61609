import { PossessionOverrun } from './overrun.js';

if (!customElements.get('possession-overrun'))
  customElements.define('possession-overrun', PossessionOverrun);

export { PossessionOverrun };
export type { FigureAskEvent } from '../shared/figure-ask-event.js';
export type { OnSiteChangeEvent } from './on-site-event.js';
export type { OverrunChangeEvent } from './overrun-change-event.js';
export type { OverrunCompareEvent } from './overrun-compare-event.js';
export type { ReportAskEvent } from '../report/report-events.js';
