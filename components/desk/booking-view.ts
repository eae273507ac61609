import { html, type TemplateResult } from 'lit';
import type { Results } from '../../src/engine/index.js';
import type { CalendarSaveEvent } from '../booking/calendar-save-event.js';
import type { ShareChangeEvent } from '../booking/share-change-event.js';
import type { Desk } from './desk-parts.js';
import { withCells } from './edits.js';
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
      @possession-share-change=${({ window, sharePercent }: ShareChangeEvent) => {
        const cells = { 'trains hit': String(sharePercent) };
        if (desk.document)
          desk.edit(
            withCells(desk.document, 'windows', 'window', window, cells),
            `${window} hits ${sharePercent} % of the trains`,
          );
      }}
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
