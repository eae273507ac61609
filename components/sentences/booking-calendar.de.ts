import type { BookingCalendarSentences } from '../../src/engine/index.js';
import { strings } from '../booking/strings.de.js';
import { inTwo } from '../shared/in-two.de.js';
import { moment } from './parts.de.js';

// What a calendar of booking dates says. From memory, to be read by a native speaker of the trade.

export const bookingCalendar: BookingCalendarSentences = {
  'booking-about': ({ document, plan }, say) =>
    `Dokument: ${document}. Arbeitsplan: ${plan === null ? 'keiner vereinbart' : say(plan)}.`,
  'booking-due': ({ due }) => `Fällig ${moment(due)} (${due.zone}).`,
  'booking-by': ({ by }) => `Durch: ${by}.`,
  'booking-state': ({ state }) => `Stand beim Schreiben: ${strings.state[state]}.`,
  'booking-in-two': ({ anchor }) => inTwo[anchor],
  'booking-source': ({ source, sureness }) => `Quelle: ${source} (${sureness}).`,
};
