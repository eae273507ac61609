import { PossessionHandback } from './handback.js';

if (!customElements.get('possession-handback'))
  customElements.define('possession-handback', PossessionHandback);

export { PossessionHandback };
export type { CalendarSaveEvent } from '../booking/calendar-save-event.js';
export type { DecisionsChangeEvent } from './decisions-change-event.js';
export type { FigureAskEvent } from '../shared/figure-ask-event.js';
export type { HandbackEntryEvent } from './handback-entry-event.js';
export type { HandbackLogMergeEvent } from './handback-log-events.js';
export type { HandbackLogSaveEvent } from './handback-log-events.js';
export type { HandbackRecordEvent } from './handback-record-event.js';
export type { WindowSelectEvent } from '../ribbon/window-select-event.js';
