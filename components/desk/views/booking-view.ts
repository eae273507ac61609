import { html, nothing, type TemplateResult } from 'lit';
import type { Results } from '../../../src/engine/index.js';
import { weekdays, type BookingCount } from '../../../src/model/index.js';
import type { CalendarSaveEvent } from '../../booking/calendar-save-event.js';
import type { ShareChangeEvent } from '../../booking/share-change-event.js';
import { planLine } from './agreed-view.js';
import type { Desk } from '../desk-parts.js';
import { cellsOf } from '../forms/edits.js';
import { outlookTrouble } from '../results/forecast-trouble.js';
import { saveFile } from '../files/save-file.js';
import { weekdayText } from '../../shared/format.js';
import { changing } from '../../shared/changing.js';

/** What has to be asked and offered by when. */
export function bookingView(desk: Desk, results: Results): TemplateResult {
  return html`<div class="fill pad">
    ${planLine(desk)} ${changing(desk.sharing.reads, countForm(desk))}
    ${outlookTrouble(desk.outlooks)}
    <possession-booking
      .answer=${desk.outlooks.booked}
      .windows=${results.plan.windows}
      .now=${desk.moment()}
      .readonly=${desk.sharing.reads}
      @possession-share-change=${({ window, sharePercent }: ShareChangeEvent) => {
        const cells = { 'trains hit': String(sharePercent) };
        if (desk.document)
          desk.change(
            cellsOf(desk.document, 'windows', 'window', window, cells),
            desk.words.forms.booking.hits(window, sharePercent),
          );
      }}
      @possession-calendar-save=${(event: CalendarSaveEvent) =>
        saveFile('booking-dates.ics', event.text, 'text/calendar')}
    ></possession-booking>
  </div>`;
}

/** Where lead times of weeks are counted from: the day of the window, or its planning week. */
function countForm(desk: Desk): TemplateResult {
  const { document, outlooks } = desk;
  const words = desk.words.forms.booking;
  const { weeksFrom, weekStarts } = outlooks.booked ?? { weeksFrom: 'window', weekStarts: 'sat' };
  const set = (more: Partial<BookingCount>): void => {
    if (!document) return;
    const booking = { weeksFrom, weekStarts, ...more };
    desk.change({ part: ['booking'], from: document.booking, value: booking }, words.changed);
  };
  return html`<div class="bar count-weeks">
    <label
      >${words.countedFrom}
      <select
        @change=${(event: Event) =>
          set({
            weeksFrom: (event.target as HTMLSelectElement).value as BookingCount['weeksFrom'],
          })}
      >
        <option value="window" ?selected=${weeksFrom === 'window'}>${words.window}</option>
        <option value="railway week" ?selected=${weeksFrom === 'railway week'}>
          ${words.week}
        </option>
      </select>
    </label>
    ${
      weeksFrom === 'window'
        ? nothing
        : html`<label
            >${words.weekBegins}
            <select
              @change=${(event: Event) =>
                set({
                  weekStarts: (event.target as HTMLSelectElement)
                    .value as BookingCount['weekStarts'],
                })}
            >
              ${weekdays.map(
                (day, index) =>
                  html`<option value=${day} ?selected=${day === weekStarts}>
                    ${weekdayText(index + 1, 'long')}
                  </option>`,
              )}
            </select>
          </label>`
    }
  </div>`;
}

export async function askBooking(desk: Desk): Promise<void> {
  const { engine, document, outlooks } = desk;
  if (engine && document && !outlooks.booked)
    await outlooks.askBooking(engine, document, desk.moment());
}
