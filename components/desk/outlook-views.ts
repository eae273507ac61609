import { html, nothing, type TemplateResult } from 'lit';
import type { ShiftLog } from '../../src/engine/index.js';
import type { AccessWindow } from '../../src/model/index.js';
import type { CalendarSaveEvent } from '../booking/calendar-save-event.js';
import type { HandbackRecordEvent } from '../handback/handback-record-event.js';
import type { OverrunChangeEvent } from '../overrun/overrun-change-event.js';
import type { WindowSelectEvent } from '../ribbon/window-select-event.js';
import type { Outlooks } from './outlooks.js';

// The views that fill the desk: handback, the cost of an overrun, booking dates.

/** What all of them show. */
export interface Shown {
  readonly outlooks: Outlooks;
  readonly windows: readonly AccessWindow[];
  /** Id of the picked window. */
  readonly selected: string;
  readonly now: number;
}

const troubleOf = ({ trouble }: Outlooks): TemplateResult | typeof nothing =>
  trouble ? html`<p class="trouble" role="alert">${trouble}</p>` : nothing;

export interface HandbackHandlers {
  readonly live: () => void;
  readonly forecast: () => void;
  readonly saveLog: () => void;
  readonly pick: (event: WindowSelectEvent) => void;
  readonly record: (event: HandbackRecordEvent) => void;
}

/** Margins, cut-off times and chances of the plan; with `live`, one window as its shift goes. */
export function handbackView(
  { outlooks, windows, selected, now }: Shown,
  { live, log, searching }: { live: boolean; log: ShiftLog; searching: boolean },
  on: HandbackHandlers,
): TemplateResult {
  const outlook = outlooks.handbacks.find((one) => one.window === selected);
  return html`<div class="bar">
      <button type="button" aria-pressed=${live} ?disabled=${!outlook} @click=${on.live}>
        During the shift
      </button>
      ${
        live
          ? html`<button type="button" @click=${on.forecast}>Forecast now</button>
              <button type="button" @click=${on.saveLog} ?disabled=${log.length === 0}>
                Save the log
              </button>`
          : nothing
      }
      <span class="said" role="status"
        >${
          searching
            ? 'Working out the plan of the work first'
            : 'Of the plan of the work: 10,000 simulated runs a window, seed 1'
        }</span
      >
    </div>
    <div class="fill pad">
      ${troubleOf(outlooks)}
      <possession-handback
        .results=${outlooks.handbacks}
        .windows=${windows}
        .selectedWindow=${outlook ? selected : ''}
        .busy=${searching || outlooks.isBusy('handback') || outlooks.isBusy('live')}
        .progress=${outlooks.progress}
        .live=${live}
        .now=${live ? now : null}
        .log=${log}
        @possession-window-select=${on.pick}
        @possession-handback-record=${on.record}
      ></possession-handback>
    </div>`;
}

export interface CostHandlers {
  readonly pick: (event: Event) => void;
  readonly minutes: (event: OverrunChangeEvent) => void;
}

/** What an overrun of the picked window costs. Without a price book it says how to bring one. */
export function costView(
  { outlooks, windows, selected }: Shown,
  hasBook: boolean,
  on: CostHandlers,
): TemplateResult {
  const window = windows.find((one) => one.id === selected) ?? null;
  return html`<div class="bar">
      <label for="priced">Window</label>
      <select id="priced" @change=${on.pick}>
        ${windows
          .filter((one) => one.status !== 'withdrawn')
          .map(
            (one) =>
              html`<option value=${one.id} ?selected=${one.id === selected}>
                ${one.id} ${one.title}
              </option>`,
          )}
      </select>
      <span class="said" role="status"
        >${
          outlooks.handbacks.length > 0
            ? 'With the chance of each overrun from the simulated handback'
            : 'Open Handback first to see what is to be expected of the planned work'
        }</span
      >
    </div>
    <div class="fill pad">
      ${troubleOf(outlooks)}
      ${
        hasBook
          ? html`<possession-overrun
              .answer=${outlooks.price}
              .window=${window}
              .overrunMinutes=${outlooks.overrunMinutes}
              @possession-overrun-change=${on.minutes}
            ></possession-overrun>`
          : html`<p class="quiet">
              The plan has no price book. Import one (JSON) to price an overrun.
            </p>`
      }
    </div>`;
}

/** What has to be asked and offered by when. */
export function bookingView(
  { outlooks, windows, now }: Shown,
  save: (event: CalendarSaveEvent) => void,
): TemplateResult {
  return html`<div class="fill pad">
    ${troubleOf(outlooks)}
    <possession-booking
      .answer=${outlooks.booked}
      .windows=${windows}
      .now=${now}
      @possession-calendar-save=${save}
    ></possession-booking>
  </div>`;
}
