import { html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { MINUTE, type Instant } from '../../src/calendar/index.js';
import type { BookAnswer } from '../../src/engine/index.js';
import type { AccessWindow } from '../../src/model/index.js';
import { base } from '../shared/base.js';
import { cautionList, cautionStyles } from '../shared/cautions.js';
import { paper, PORTRAIT } from '../shared/paper.js';
import { PrintWatch } from '../shared/print-watch.js';
import { momentText, numberText } from '../shared/format.js';
import { WidthWatch } from '../shared/width-watch.js';
import { loadSentences, saidText } from '../shared/said.js';
import { wordsOf } from '../shared/words-of.js';
import { Words } from '../shared/words.js';
import { styles } from './booking.styles.js';
import { CalendarSaveEvent } from './calendar-save-event.js';
import { WEEKS } from './coming-weeks.js';
import { dueTable } from './due-table.js';
import { listed, whoIn, type BookingFilter } from './filter.js';
import { milestoneStates, stateClass, stateMark } from './state-mark.js';
import { ShareChangeEvent } from './share-change-event.js';
import { defaultStrings, type BookingStrings } from './strings.js';
import { weekStrip } from './strip.js';
import { windowTable } from './window-table.js';
import { changing } from '../shared/changing.js';

export type { BookingFilter } from './filter.js';

/**
 * By when what has to be asked for, offered and published for each window, and how each date stands.
 *
 * It reads no clock: states and time left are those of the answer; `now` places the strip of the coming weeks.
 * @summary The booking dates of every window.
 * @tag possession-booking
 * @event {CalendarSaveEvent} possession-calendar-save - A reader wants the dates as a calendar file.
 * @event {ShareChangeEvent} possession-share-change - A reader said how many of a day's trains a window hits.
 * @csspart milestone - One date.
 * @csspart window - One window with its period and class.
 * @csspart strip - The picture of the coming weeks.
 * @csspart cautions - The cautions.
 */
export class PossessionBooking extends LitElement {
  static override readonly styles = [...base, cautionStyles, styles, paper];
  static override readonly properties: PropertyDeclarations = {
    answer: { attribute: false },
    windows: { attribute: false },
    now: { attribute: false },
    readonly: { type: Boolean },
    filter: { type: String, reflect: true },
    who: { type: String },
    strings: { attribute: false },
  };

  declare answer: BookAnswer | null;
  /** For titles, times and order; a window that is not here is shown by its id, at the end. */
  declare windows: readonly AccessWindow[];
  /** The moment the answer was asked for; null: as the answer's first milestone tells. */
  declare now: Instant | null;
  /** Which dates are listed: those still open, those late, those due soon, or all. */
  declare filter: BookingFilter;
  /** Whose dates are listed; empty: those of all. */
  declare who: string;
  /** The share of trains may not be changed; whoever shows this says why. */
  declare readonly: boolean;
  /** Words in place of the default ones. */
  declare strings: Partial<BookingStrings>;

  readonly #words = new Words<BookingStrings>(this, defaultStrings, {
    de: () => import('./strings.de.js'),
  });

  /** Why no calendar was made when it was last asked for; empty: it was, or nobody asked. */
  #calendarTrouble = '';
  readonly #strip = new WidthWatch(this, '.strip-frame', 640);
  readonly #print = new PrintWatch(this, () => this.performUpdate());

  constructor() {
    super();
    this.answer = null;
    this.windows = [];
    this.now = null;
    this.readonly = false;
    this.filter = 'open';
    this.who = '';
    this.strings = {};
  }

  override render(): TemplateResult {
    const words = this.#words.now;
    const { answer } = this;
    const first = answer?.milestones[0];
    if (!answer || !first) return html`<p class="empty quiet">${words.empty}</p>`;
    const now = this.now ?? first.due - first.minutesLeft * MINUTE;
    const zone = this.windows[0]?.zone ?? first.zone;
    return html`<header>
        <div class="name">
          <h2>${words.title}</h2>
          <p class="quiet">${words.asOf(momentText(now, zone))}. ${words.rules(answer.rules)}</p>
        </div>
        <button type="button" class="save" @click=${() => void this.#saveCalendar(answer)}>
          ${words.save}
        </button>
        ${
          this.#calendarTrouble === ''
            ? nothing
            : html`<p class="problem" role="alert">${words.noCalendar(this.#calendarTrouble)}</p>`
        }
      </header>
      ${cautionList(words.cautions, words.cautionLines)} ${this.#renderSummary(answer, words)}
      <section part="strip" class="weeks">
        <h3>${words.strip(WEEKS)}</h3>
        <div class="strip-frame">
          ${weekStrip(answer.milestones, now, zone, this.#print.printing ? PORTRAIT : this.#strip.width, words)}
        </div>
      </section>
      ${this.#renderFilter(answer, words)}
      <div class="columns">
        ${this.#renderDates(answer, words)} ${this.#renderWindows(answer, words)}
      </div>
      ${this.#renderSources(answer, words)}`;
  }

  /** What makes the file is loaded when the first is asked for. */
  async #saveCalendar({ milestones, calendar }: BookAnswer): Promise<void> {
    try {
      const [{ bookingCalendarIn }] = await Promise.all([
        import('../../src/engine/booking-calendar.js'),
        this.#words.speaking(() => loadSentences()),
      ]);
      this.#calendarTrouble = '';
      const text = this.#words.speaking(() => bookingCalendarIn(saidText, milestones, calendar));
      this.dispatchEvent(new CalendarSaveEvent(text));
    } catch (error) {
      this.#calendarTrouble = wordsOf(error);
    }
    this.requestUpdate();
  }

  #renderSummary({ milestones }: BookAnswer, words: BookingStrings): TemplateResult {
    return html`<ul class="summary" aria-label=${words.summary}>
      ${milestoneStates.map((state) => {
        const count = milestones.filter((milestone) => milestone.state === state).length;
        return html`<li class=${`${stateClass(state)}${count === 0 ? ' none' : ''}`}>
          <strong>${numberText(count)}</strong>${stateMark(state, words.state[state])}
        </li>`;
      })}
    </ul>`;
  }

  #renderFilter({ milestones }: BookAnswer, words: BookingStrings): TemplateResult {
    const choices: readonly (readonly [BookingFilter, string])[] = [
      ['open', words.open],
      ['late', words.onlyLate],
      ['soon', words.soon],
      ['all', words.all],
    ];
    return html`<div class="asked on-screen">
      <div class="choice" role="group" aria-label=${words.show}>
        ${choices.map(
          ([filter, word]) =>
            html`<button
              type="button"
              data-filter=${filter}
              aria-pressed=${this.filter === filter}
              @click=${() => {
                this.filter = filter;
              }}
            >
              ${word}
              <span class="count">${listed(milestones, filter, this.who).length}</span>
            </button>`,
        )}
      </div>
      <label
        >${words.whose}
        <select
          @change=${(event: Event) => {
            this.who = (event.target as HTMLSelectElement).value;
          }}
        >
          <option value="" ?selected=${this.who === ''}>${words.everybody}</option>
          ${whoIn(milestones).map(
            (text) => html`<option value=${text} ?selected=${this.who === text}>${text}</option>`,
          )}
        </select>
      </label>
    </div>`;
  }

  #renderDates({ milestones }: BookAnswer, words: BookingStrings): TemplateResult {
    const shown = listed(milestones, this.filter, this.who);
    return html`<section class="dates">
      <div role="status">
        ${shown.length === 0 ? html`<p class="quiet none-shown">${words.nothingShown}</p>` : nothing}
      </div>
      <p class="on-paper">${words.ofAll(String(shown.length), String(milestones.length))}</p>
      ${shown.length === 0 ? nothing : dueTable(shown, this.windows, words)}
    </section>`;
  }

  #renderWindows({ windows }: BookAnswer, words: BookingStrings): TemplateResult | typeof nothing {
    if (windows.length === 0) return nothing;
    return html`<section class="class">
      <h3>${words.windowsHead}</h3>
      <p class="quiet on-screen">${words.noShare}</p>
      <div class="scroll" tabindex="0" role="region" aria-label=${words.windowsHead}>
        ${changing(
          this.readonly,
          windowTable(windows, this.windows, words, (window, percent) =>
            this.dispatchEvent(new ShareChangeEvent(window, percent)),
          ),
        )}
      </div>
    </section>`;
  }

  /** Each lead time once, however many windows it holds for. */
  #renderSources({ milestones }: BookAnswer, words: BookingStrings): TemplateResult {
    const rules = new Map(milestones.map((milestone) => [milestone.milestone, milestone]));
    return html`<details class="sources">
      <summary>${words.sources}</summary>
      <dl>
        ${[...rules.values()].map(
          (rule) =>
            html`<div>
              <dt>${rule.milestone}</dt>
              <dd>${words.before[rule.before]} ${rule.source} (${rule.sureness})</dd>
            </div>`,
        )}
      </dl>
    </details>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'possession-booking': PossessionBooking;
  }
}
