import { html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { MINUTE, type Instant } from '../../src/calendar/index.js';
import type { BookAnswer, Milestone } from '../../src/engine/index.js';
import type { AccessWindow } from '../../src/model/index.js';
import { base } from '../shared/base.js';
import { cautionList, cautionStyles } from '../shared/cautions.js';
import { paper } from '../shared/paper.js';
import { floatText, momentText, stretchText } from '../shared/format.js';
import { WidthWatch } from '../shared/width-watch.js';
import { styles } from './booking.styles.js';
import { CalendarSaveEvent } from './calendar-save-event.js';
import { WEEKS } from './coming-weeks.js';
import { milestoneStates, stateClass, stateMark } from './state-mark.js';
import { ShareChangeEvent } from './share-change-event.js';
import { defaultStrings, type BookingStrings } from './strings.js';
import { weekStrip } from './strip.js';

/** Which milestones are listed. */
export type BookingFilter = 'late' | 'soon' | 'all';

const FOUR_WEEKS = 4 * 7 * 1440;

const passes: Readonly<Record<BookingFilter, (one: Milestone) => boolean>> = {
  late: (one) => one.state === 'late',
  soon: (one) => one.state === 'due' && one.minutesLeft <= FOUR_WEEKS,
  all: () => true,
};

/**
 * By when what has to be asked for, offered and published for each window, and how each date stands.
 *
 * It reads no clock: states and time left are those of the answer; `now` places the strip of the coming weeks.
 * @summary The booking dates of every window.
 * @tag possession-booking
 * @event {CalendarSaveEvent} possession-calendar-save - A reader wants the dates as a calendar file.
 * @event {ShareChangeEvent} possession-share-change - A reader said how many of a day's trains a window hits.
 * @csspart window - One window with its milestones.
 * @csspart strip - The picture of the coming weeks.
 * @csspart cautions - The cautions.
 */
export class PossessionBooking extends LitElement {
  static override readonly styles = [...base, cautionStyles, styles, paper];
  static override readonly properties: PropertyDeclarations = {
    answer: { attribute: false },
    windows: { attribute: false },
    now: { attribute: false },
    filter: { type: String, reflect: true },
    strings: { attribute: false },
  };

  declare answer: BookAnswer | null;
  /** For titles, times and order; a window that is not here is shown by its id, at the end. */
  declare windows: readonly AccessWindow[];
  /** The moment the answer was asked for; null: as the answer's first milestone tells. */
  declare now: Instant | null;
  declare filter: BookingFilter;
  /** Words in place of the default ones. */
  declare strings: Partial<BookingStrings>;

  readonly #strip = new WidthWatch(this, '.strip-frame', 640);

  constructor() {
    super();
    this.answer = null;
    this.windows = [];
    this.now = null;
    this.filter = 'all';
    this.strings = {};
  }

  override render(): TemplateResult {
    const words = { ...defaultStrings, ...this.strings };
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
        <button
          type="button"
          class="save"
          @click=${() => this.dispatchEvent(new CalendarSaveEvent(answer.calendar))}
        >
          ${words.save}
        </button>
      </header>
      ${cautionList(words.cautions)} ${this.#renderSummary(answer, words)}
      <section part="strip" class="weeks">
        <h3>${words.strip(WEEKS)}</h3>
        <div class="strip-frame">
          ${weekStrip(answer.milestones, now, zone, this.#strip.width, words)}
        </div>
      </section>
      ${this.#renderFilter(answer, words)} ${this.#renderWindows(answer, words)}
      ${this.#renderSources(answer, words)}`;
  }

  #renderSummary({ milestones }: BookAnswer, words: BookingStrings): TemplateResult {
    return html`<ul class="summary" aria-label=${words.summary}>
      ${milestoneStates.map((state) => {
        const count = milestones.filter((one) => one.state === state).length;
        return html`<li class=${`${stateClass(state)}${count === 0 ? ' none' : ''}`}>
          <strong>${count.toLocaleString('en-GB')}</strong>${stateMark(state, words.state[state])}
        </li>`;
      })}
    </ul>`;
  }

  #renderFilter({ milestones }: BookAnswer, words: BookingStrings): TemplateResult {
    const choices: readonly (readonly [BookingFilter, string])[] = [
      ['late', words.onlyLate],
      ['soon', words.soon],
      ['all', words.all],
    ];
    return html`<div class="filter choice" role="group" aria-label=${words.show}>
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
            <span class="count">${milestones.filter(passes[filter]).length}</span>
          </button>`,
      )}
    </div>`;
  }

  #renderWindows({ milestones }: BookAnswer, words: BookingStrings): TemplateResult {
    const byWindow = new Map<string, Milestone[]>(this.windows.map((one) => [one.id, []]));
    for (const one of milestones.filter(passes[this.filter])) {
      const group = byWindow.get(one.window);
      if (group) group.push(one);
      else byWindow.set(one.window, [one]);
    }
    const groups = [...byWindow].filter(([, shown]) => shown.length > 0);
    return html`<div class="windows" role="status">
        ${groups.length === 0 ? html`<p class="quiet">${words.nothingShown}</p>` : nothing}
      </div>
      ${groups.map(([id, shown]) => this.#renderWindow(id, shown, words))}`;
  }

  /** Each lead time once, however many windows it holds for. */
  #renderSources({ milestones }: BookAnswer, words: BookingStrings): TemplateResult {
    const rules = new Map(milestones.map((one) => [one.milestone, one]));
    return html`<details class="sources">
      <summary>${words.sources}</summary>
      <dl>
        ${[...rules.values()].map(
          (one) =>
            html`<div>
              <dt>${one.milestone}</dt>
              <dd>${words.before[one.before]} ${one.source} (${one.sureness})</dd>
            </div>`,
        )}
      </dl>
    </details>`;
  }

  /** Days, periods and class of a window, with its share of trains to be filled in. */
  #renderClass(id: string, words: BookingStrings): TemplateResult | typeof nothing {
    const booked = this.answer?.windows.find((one) => one.window === id);
    if (!booked) return nothing;
    const { days, periods, restriction, sharePercent } = booked;
    return html`<div class="class">
      <p>
        ${words.days(days)}.
        ${periods.length > 1 ? words.twoPeriods(periods.join(', ')) : words.onePeriod(periods.join())}
        ${restriction === null ? words.noShare : html`<strong>${words.restriction(restriction)}</strong>`}
      </p>
      <label
        >${words.share}
        <input
          type="number"
          min="0"
          max="100"
          step="any"
          .value=${sharePercent === null ? '' : String(sharePercent)}
          @change=${(event: Event) => {
            const input = event.currentTarget as HTMLInputElement;
            if (input.value !== '' && input.reportValidity())
              this.dispatchEvent(new ShareChangeEvent(id, input.valueAsNumber));
          }}
        />
        ${words.shareUnit}</label
      >
    </div>`;
  }

  #renderWindow(
    id: string,
    milestones: readonly Milestone[],
    words: BookingStrings,
  ): TemplateResult {
    const window = this.windows.find((one) => one.id === id);
    return html`<section part="window" class="window">
      <h3>${window ? `${id} ${window.title}` : id}</h3>
      <p class="quiet">
        ${
          window
            ? `${stretchText(window.start, window.end, window.zone)} (${window.zone}), ${window.status}`
            : words.notInPlan
        }
      </p>
      ${this.#renderClass(id, words)}
      <table role="table">
        <thead role="rowgroup">
          <tr role="row">
            <th scope="col" role="columnheader" class="state-head">${words.stateHead}</th>
            <th scope="col" role="columnheader">${words.milestone}</th>
            <th scope="col" role="columnheader" class="due-head">${words.dueHead}</th>
            <th scope="col" role="columnheader" class="figure">${words.left}</th>
          </tr>
        </thead>
        <tbody role="rowgroup">
          ${milestones.map(
            (one) =>
              html`<tr role="row" class=${stateClass(one.state)}>
                <td role="cell" class="state-cell">
                  ${stateMark(one.state, words.state[one.state])}
                </td>
                <th scope="row" role="rowheader">
                  ${one.milestone}
                  ${one.by === undefined ? nothing : html`<span class="by">${words.by(one.by)}</span>`}
                  ${one.note === undefined ? nothing : html`<span class="note">${one.note}</span>`}
                </th>
                <td role="cell" class="due-cell">
                  <time>${momentText(one.due, one.zone)}</time>
                </td>
                <td role="cell" class="figure left">${leftText(one, words)}</td>
              </tr>`,
          )}
        </tbody>
      </table>
    </section>`;
  }
}

/** What is left, or how long ago it was; nothing for what is met in time or not needed. */
function leftText(one: Milestone, words: BookingStrings): string {
  if (one.metLateByMinutes !== undefined) return words.metLate(floatText(one.metLateByMinutes));
  if (one.state === 'met' || one.state === 'not needed') return '';
  const size = floatText(Math.abs(one.minutesLeft));
  return one.minutesLeft < 0 ? words.ago(size) : words.inTime(size);
}

declare global {
  interface HTMLElementTagNameMap {
    'possession-booking': PossessionBooking;
  }
}
