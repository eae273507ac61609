import { PossessionBooking } from './booking.js';

if (!customElements.get('possession-booking'))
  customElements.define('possession-booking', PossessionBooking);

export { PossessionBooking };
