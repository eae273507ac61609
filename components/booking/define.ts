import { PossessionBooking } from './booking.js';

if (!customElements.get('possession-booking'))
  customElements.define('possession-booking', PossessionBooking);

export { PossessionBooking };
export type { CalendarSaveEvent } from './calendar-save-event.js';
export type { ShareChangeEvent } from './share-change-event.js';
