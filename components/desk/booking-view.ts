import { html, type TemplateResult } from 'lit';
import type { Results } from '../../src/engine/index.js';
import type { CalendarSaveEvent } from '../booking/calendar-save-event.js';
import type { Desk } from './desk-parts.js';
import { outlookTrouble } from './outlook-trouble.js';
import { saveFile } from './save-file.js';

/** What has to be asked and offered by when. */
export function bookingView(desk: Desk, results: Results): TemplateResult {
  return html`<div class="fill pad">
    ${outlookTrouble(desk.outlooks)}
    <possession-booking
      .answer=${desk.outlooks.booked}
      .windows=${results.plan.windows}
      .now=${desk.moment()}
      @possession-calendar-save=${(event: CalendarSaveEvent) =>
        saveFile('booking-dates.ics', event.text, 'text/calendar')}
    ></possession-booking>
  </div>`;
}

export async function askBooking(desk: Desk): Promise<void> {
  const { engine, document, outlooks } = desk;
  if (engine && document && !outlooks.booked)
    await outlooks.askBooking(engine, document, desk.moment());
}
