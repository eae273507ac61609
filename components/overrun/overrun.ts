import {
  html,
  LitElement,
  noChange,
  nothing,
  type PropertyDeclarations,
  type PropertyValues,
  type TemplateResult,
} from 'lit';
import { live } from 'lit/directives/live.js';
import { addMinutes, durationText } from '../../src/calendar/index.js';
import type { ExpectedCost, PriceAnswer } from '../../src/engine/index.js';
import type { AccessWindow } from '../../src/model/index.js';
import { base } from '../shared/base.js';
import { cautionList, cautionStyles } from '../shared/cautions.js';
import { momentText } from '../shared/format.js';
import { FigureAskEvent } from '../shared/figure-ask-event.js';
import { WidthWatch } from '../shared/width-watch.js';
import { askFigure, type AskFigure } from './ask-figure.js';
import { costPicture, minuteAt } from './cost-picture.js';
import { curveTable, rowTable, stepTable, trainTable } from './cost-tables.js';
import { expectedPart } from './expected-part.js';
import { keyDateList } from './key-date-list.js';
import { moneyText, sumText } from './money-text.js';
import { numberedSteps } from './numbered-steps.js';
import { OverrunChangeEvent } from './overrun-change-event.js';
import { styles } from './overrun.styles.js';
import { defaultStrings, type OverrunStrings } from './strings.js';

/** A week: what is handed back later than that is no overrun but another plan. */
const MOST_MINUTES = 10_080;

/**
 * What handing a window back late costs: the total of the asked minute, its heads of cost, the cost of every other
 * minute as a curve, and with a simulation what is to be expected.
 *
 * The total follows the asked minute at once, from the curve; the heads of cost follow when the new answer is given.
 * @summary The cost of an overrun, minute by minute.
 * @tag possession-overrun
 * @event {OverrunChangeEvent} possession-overrun-change - A reader asks what another overrun costs.
 * @event {FigureAskEvent} possession-figure-ask - A reader asks where a figure comes from.
 * @csspart minutes - The control of the minutes.
 * @csspart total - The large figure.
 * @csspart row - One head of cost.
 * @csspart cautions - The cautions.
 */
export class PossessionOverrun extends LitElement {
  static override readonly styles = [...base, cautionStyles, ...styles];
  static override readonly properties: PropertyDeclarations = {
    answer: { attribute: false },
    window: { attribute: false },
    overrunMinutes: { type: Number, attribute: 'overrun-minutes' },
    strings: { attribute: false },
  };

  declare answer: PriceAnswer | null;
  /** The window that is priced, for its title and zone. */
  declare window: AccessWindow | null;
  /** The asked overrun in whole minutes; null: that of the answer. */
  declare overrunMinutes: number | null;
  /** Words in place of the default ones. */
  declare strings: Partial<OverrunStrings>;

  /** What was typed is no number of minutes. */
  #refused = false;
  readonly #curve = new WidthWatch(this, '.curve-frame', 360);
  readonly #chances = new WidthWatch(this, '.chance-frame', 360);

  constructor() {
    super();
    this.answer = null;
    this.window = null;
    this.overrunMinutes = null;
    this.strings = {};
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    const other =
      changed.has('answer') && changed.get('answer')?.at.window !== this.answer?.at.window;
    if (changed.has('overrunMinutes') || other) this.#refused = false;
  }

  override render(): TemplateResult {
    const words = { ...defaultStrings, ...this.strings };
    const { answer } = this;
    if (!answer) return html`<p class="empty quiet">${words.empty}</p>`;
    const { at, curve, expected } = answer;
    const asked = this.overrunMinutes ?? at.overrunMinutes;
    const zone = this.window?.zone ?? 'UTC';
    const groups = numberedSteps(curve);
    return html`${this.#renderTop(answer, asked, zone, words)}
      ${cautionList(words.cautions, at.cautions)}
      <div class="columns">
        <div class="column">
          <section class="picture">
            <h3>${words.curve}</h3>
            <div class="curve-frame" @click=${this.#onPick}>
              ${costPicture(curve, groups, asked, this.#curve.width, words)}
            </div>
            ${
              curve.falls.length > 0
                ? html`<p class="note">
                    ${words.falls(curve.falls.map((one) => durationText(one.atMinute)).join(', '))}
                  </p>`
                : nothing
            }
            <details>
              <summary>${words.curveTable}</summary>
              ${curveTable(curve, asked, words)}
            </details>
          </section>
          <section class="heads" aria-busy=${asked !== at.overrunMinutes}>
            <h3>${words.rows}</h3>
            ${
              asked === at.overrunMinutes
                ? nothing
                : html`<p class="pending">
                    ${words.working}. ${words.rowsOf(durationText(at.overrunMinutes))}
                  </p>`
            }
            <p class="quiet">${words.basis[at.basis]}</p>
            ${rowTable(at, this.#why, words)}
          </section>
        </div>
        <div class="column">
          <section class="steps-list">
            <h3>${words.steps}</h3>
            ${stepTable(groups, chancesOf(expected), asked, words)}
          </section>
          ${expectedPart(expected, this.#chances.width, this.#why, words)}
        </div>
      </div>
      <section class="held">
        <h3>${words.trains}</h3>
        ${
          at.trains.length === 0
            ? html`<p class="quiet">${words.noTrains}</p>`
            : trainTable(at, zone, words)
        }
      </section>
      ${keyDateList(answer, zone, words)} ${this.#renderLengths(answer, words)}
      ${this.#renderNotes(answer, words)}`;
  }

  #renderTop(
    { at, curve }: PriceAnswer,
    asked: number,
    zone: string,
    words: OverrunStrings,
  ): TemplateResult {
    const title = this.window ? `${this.window.id} ${this.window.title}` : at.window;
    const total = asked === at.overrunMinutes ? at.total : curve.amounts[asked];
    const end = addMinutes(at.handbackAt, asked - at.overrunMinutes);
    return html`<header>
      <div class="name">
        <h2>${words.title}</h2>
        <p class="quiet">${title}</p>
        ${this.window ? nothing : html`<p class="quiet">${words.noZone}</p>`}
      </div>
      <div part="minutes" class="minutes" role="group" aria-label=${words.minutes}>
        <label for="minutes">${words.minutes}</label>
        <input
          id="minutes"
          type="range"
          min="0"
          max=${curve.maxMinutes}
          step="1"
          .value=${live(String(Math.min(asked, curve.maxMinutes)))}
          aria-valuetext=${durationText(Math.min(asked, curve.maxMinutes))}
          @input=${this.#onInput}
        />
        <span class="exact">
          <input
            id="exact"
            type="number"
            min="0"
            max=${MOST_MINUTES}
            step="1"
            inputmode="numeric"
            aria-label=${words.minutesExact}
            aria-invalid=${this.#refused}
            aria-describedby=${this.#refused ? 'refused' : nothing}
            .value=${this.#refused ? noChange : live(String(asked))}
            @input=${this.#onInput}
          /><span aria-hidden="true">${words.unit}</span>
        </span>
        <p id="refused" class="refused" role="status">
          ${this.#refused ? words.wholeMinutes(MOST_MINUTES.toLocaleString('en-GB')) : nothing}
        </p>
      </div>
      <p class="total" role="status">
        <span class="label">${words.total}</span>
        <span part="total" class="sum"
          >${
            total === undefined
              ? words.working
              : html`<span class="currency">${at.currency}</span> ${
                    asked === at.overrunMinutes
                      ? askFigure(
                          moneyText(total),
                          sumText(total, at.currency),
                          { of: 'cost-total' },
                          this.#why,
                          words,
                        )
                      : moneyText(total)
                  }`
          }</span
        >
        <span class="label"
          >${durationText(asked)}, ${words.handedBack(momentText(end, zone))}</span
        >
      </p>
    </header>`;
  }

  #renderLengths({ lengths }: PriceAnswer, words: OverrunStrings): TemplateResult | typeof nothing {
    if (!lengths || lengths.length === 0) return nothing;
    return html`<section class="notes lengths">
      <h3>${words.lengths}</h3>
      <ul>
        ${lengths.map(
          (one) =>
            html`<li>
              <strong>${one.name}</strong>: ${one.text}.
              ${one.clockChangeDecides ? html`<strong>${words.clockDecides}</strong>` : nothing}
            </li>`,
        )}
      </ul>
    </section>`;
  }

  #renderNotes({ at, curve }: PriceAnswer, words: OverrunStrings): TemplateResult | typeof nothing {
    const notes = [...new Set([...at.notes, ...curve.notes])];
    if (notes.length === 0) return nothing;
    return html`<section class="notes">
      <h3>${words.notes}</h3>
      <ul>
        ${notes.map((one) => html`<li>${one}</li>`)}
      </ul>
    </section>`;
  }

  readonly #why: AskFigure = (figure) => {
    this.dispatchEvent(new FigureAskEvent(figure));
  };

  readonly #onInput = (event: Event): void => {
    const field = event.target as HTMLInputElement;
    const minutes = field.valueAsNumber;
    if (!Number.isInteger(minutes) || minutes < 0 || minutes > MOST_MINUTES) {
      this.#refused = true;
      this.requestUpdate();
      return;
    }
    this.#ask(minutes);
  };

  /** A pointer's short way to a minute; the keyboard has the slider. */
  readonly #onPick = (event: MouseEvent): void => {
    const frame = (event.currentTarget as Element).getBoundingClientRect();
    if (this.answer)
      this.#ask(minuteAt(event.clientX - frame.left, this.#curve.width, this.answer.curve));
  };

  #ask(minutes: number): void {
    this.#refused = false;
    this.requestUpdate();
    if (minutes === (this.overrunMinutes ?? this.answer?.at.overrunMinutes)) return;
    this.overrunMinutes = minutes;
    this.dispatchEvent(new OverrunChangeEvent(minutes));
  }
}

/** The chance of each minute with a step. All steps of one minute have the same. */
function chancesOf(
  expected: ExpectedCost | null,
): ReadonlyMap<number, ExpectedCost['steps'][number]> {
  return new Map((expected?.steps ?? []).map((one) => [one.atMinute, one]));
}

declare global {
  interface HTMLElementTagNameMap {
    'possession-overrun': PossessionOverrun;
  }
}
