import { PossessionOptions } from './options.js';

if (!customElements.get('possession-options'))
  customElements.define('possession-options', PossessionOptions);

export { PossessionOptions };
export type { OptionTakeEvent } from './option-take-event.js';
export type { OptionsAskEvent } from './options-ask-event.js';
export type { OptionsStopEvent } from './options-stop-event.js';
export type { OwnOptionsChangeEvent } from './own-options-change-event.js';
export type { ReportAskEvent } from '../report/report-events.js';
