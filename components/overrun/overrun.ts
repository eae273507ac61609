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
import type { PriceAnswer } from '../../src/engine/index.js';
import type { AccessWindow } from '../../src/model/index.js';
import { base } from '../shared/base.js';
import { paper } from '../shared/paper.js';
import { cautionList, cautionStyles } from '../shared/cautions.js';
import { momentText, numberText } from '../shared/format.js';
import { FigureAskEvent } from '../shared/figure-ask-event.js';
import { askFigure, type AskFigure } from './ask-figure.js';
import '../chart/define.js';
import type { ChartPickEvent } from '../chart/chart-pick-event.js';
import type { ChartShown } from '../chart/shown.js';
import { ReportAskEvent } from '../report/report-events.js';
import { chanceChart, costChart, minutesShown } from './charts.js';
import { rowTable, stepTable, trainTable } from './cost-tables.js';
import { expectedPart } from './expected-part.js';
import { keyDateList } from './key-date-list.js';
import { moneyText, sumText } from './money-text.js';
import { numberedSteps } from './numbered-steps.js';
import { OnSiteChangeEvent } from './on-site-event.js';
import { onSitePart, type ChangeLeaves } from './on-site-part.js';
import { notesList } from '../shared/notes-list.js';
import { OverrunChangeEvent } from './overrun-change-event.js';
import { OverrunCompareEvent } from './overrun-compare-event.js';
import { styles } from './overrun.styles.js';
import { sideBySide } from './side-by-side.js';
import { defaultStrings, type OverrunStrings } from './strings.js';
import { nameText } from '../shared/name.js';
import { Words } from '../shared/words.js';
import { saidText } from '../shared/said.js';

/** Charts with the answer, the minute and the words they were made from. */
interface CachedCharts {
  readonly answer: PriceAnswer;
  readonly asked: number;
  readonly words: OverrunStrings;
  readonly cost: ChartShown;
  readonly chance: ChartShown | null;
}

/** A week: a later handback is another plan, not an overrun. */
const MOST_MINUTES = 10_080;

/**
 * The cost of handing a window back late: the total and heads of cost for the chosen overrun, the cost of every other
 * overrun as a curve, and with a simulation the expected cost.
 *
 * The total follows the chosen overrun at once, from the curve; the heads of cost follow with the new answer.
 * @summary The cost of an overrun, minute by minute.
 * @tag possession-overrun
 * @event {OverrunChangeEvent} possession-overrun-change - A reader asks what another overrun costs.
 * @event {OverrunCompareEvent} possession-overrun-compare - A reader wants other overruns side by side.
 * @event {OnSiteChangeEvent} possession-on-site-change - A reader says when a resource leaves.
 * @event {ReportAskEvent} possession-report-ask - A reader wants a report.
 * @event {FigureAskEvent} possession-figure-ask - A reader asks where a figure comes from.
 * @csspart minutes - The control of the minutes.
 * @csspart total - The large figure.
 * @csspart row - One head of cost.
 * @csspart cautions - The cautions.
 */
export class PossessionOverrun extends LitElement {
  static override readonly styles = [...base, cautionStyles, ...styles, paper];
  static override readonly properties: PropertyDeclarations = {
    answer: { attribute: false },
    window: { attribute: false },
    overrunMinutes: { type: Number, attribute: 'overrun-minutes' },
    editable: { type: Boolean },
    strings: { attribute: false },
  };

  declare answer: PriceAnswer | null;
  /** The window that is priced, for its title and zone. */
  declare window: AccessWindow | null;
  /** The chosen overrun in whole minutes; null: that of the answer. */
  declare overrunMinutes: number | null;
  /** Whether a reader can set when plant and people leave. */
  declare editable: boolean;
  /** Texts that override the defaults. */
  declare strings: Partial<OverrunStrings>;

  readonly #words = new Words<OverrunStrings>(this, defaultStrings, {
    de: () => import('./strings.de.js'),
  });

  /** Whether the typed text is not a number of minutes. */
  #refused = false;
  #lengthsRefused = false;
  /** Cached charts and their inputs: a chart is rebuilt only for another answer or minute. */
  #charts: CachedCharts | undefined;

  constructor() {
    super();
    this.answer = null;
    this.window = null;
    this.overrunMinutes = null;
    this.editable = false;
    this.strings = {};
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    const other =
      changed.has('answer') && changed.get('answer')?.at.window !== this.answer?.at.window;
    if (changed.has('overrunMinutes') || other) this.#refused = false;
  }

  override render(): TemplateResult {
    const words = this.#words.now;
    const { answer } = this;
    if (!answer) return html`<p class="empty quiet">${words.empty}</p>`;
    const { at, curve, expected } = answer;
    const asked = this.overrunMinutes ?? at.overrunMinutes;
    const zone = this.window?.zone ?? 'UTC';
    const groups = numberedSteps(curve);
    const charts = this.#chartsOf(answer, asked, words);
    return html`${this.#renderTop(answer, asked, zone, words)}
      ${cautionList(words.cautions, words.cautionLines)}
      <div class="columns">
        <div class="column">
          ${this.#renderSide(answer, zone, words)}
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
          <section class="picture">
            <h3>${words.curve}</h3>
            <possession-chart
              class="curve"
              .shown=${charts.cost}
              @possession-chart-pick=${this.#onPick}
            ></possession-chart>
            ${
              curve.falls.length > 0
                ? html`<p class="note">
                    ${words.falls(curve.falls.map((item) => durationText(item.atMinute)).join(', '))}
                  </p>`
                : nothing
            }
          </section>
          <section class="steps-list">
            <h3>${words.steps}</h3>
            ${stepTable(groups, expected, asked, words)}
          </section>
          ${expectedPart(expected, charts.chance, this.#why, words)}
        </div>
      </div>
      ${onSitePart(at, zone, this.editable, this.#onLeaves, words)}
      <section class="held">
        <h3>${words.trains}</h3>
        ${
          at.trains.length === 0
            ? html`<p class="quiet">${words.noTrains}</p>`
            : trainTable(at, zone, words)
        }
      </section>
      ${keyDateList(answer, zone, words)} ${this.#renderLengths(answer, words)}
      ${notesList(words.notPriced, at.notPriced)} ${notesList(words.notes, at.notes)}`;
  }

  #renderTop(
    answer: PriceAnswer,
    asked: number,
    zone: string,
    words: OverrunStrings,
  ): TemplateResult {
    const { at, curve } = answer;
    const title = this.window ? nameText(this.window) : at.window;
    const total = asked === at.overrunMinutes ? at.total : curve.amounts[asked];
    const end = addMinutes(at.handbackAt, asked - at.overrunMinutes);
    return html`<header>
      <div class="name">
        <h2>${words.title}</h2>
        <p class="quiet">${title}</p>
        ${this.window ? nothing : html`<p class="quiet">${words.noZone}</p>`}
      </div>
      <div part="minutes" class="minutes on-screen" role="group" aria-label=${words.minutes}>
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
          ${this.#refused ? words.wholeMinutes(numberText(MOST_MINUTES)) : nothing}
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
        ${
          asked === at.overrunMinutes
            ? html`<span class="label next"
                >${words.nextMinute(
                  sumText(answer.nextMinute.one, at.currency),
                  sumText(answer.nextMinute.meanOfFifteen, at.currency),
                )}</span
              >`
            : nothing
        }
      </p>
    </header>`;
  }

  #renderLengths({ lengths }: PriceAnswer, words: OverrunStrings): TemplateResult | typeof nothing {
    if (!lengths || lengths.length === 0) return nothing;
    return html`<section class="notes lengths">
      <h3>${words.lengths}</h3>
      <ul>
        ${lengths.map(
          (length) =>
            html`<li>
              <strong>${length.name}</strong>: ${saidText(length.sentence)}.
              ${length.clockChangeDecides ? html`<strong>${words.clockDecides}</strong>` : nothing}
            </li>`,
        )}
      </ul>
    </section>`;
  }

  #renderSide(answer: PriceAnswer, zone: string, words: OverrunStrings): TemplateResult {
    const minutes = answer.overruns.map((overrun) => overrun.overrunMinutes);
    return html`<section class="side">
      <h3>${words.sideBySide}</h3>
      <form class="on-screen" @submit=${this.#onCompare} novalidate>
        <label for="lengths">${words.lengthsAsked}</label>
        <input
          id="lengths"
          name="lengths"
          autocomplete="off"
          .defaultValue=${minutes.join(', ')}
          aria-invalid=${this.#lengthsRefused}
          aria-describedby="lengths-refused"
        />
        <button type="submit">${words.compare}</button>
        <button type="button" @click=${() => this.dispatchEvent(new ReportAskEvent())}>
          ${words.report}
        </button>
        <span id="lengths-refused" class="refused" role="status"
          >${this.#lengthsRefused ? words.lengthsRefused(numberText(MOST_MINUTES)) : nothing}</span
        >
      </form>
      ${sideBySide(answer.overruns, zone, this.#why, words)}
    </section>`;
  }

  #chartsOf(answer: PriceAnswer, asked: number, words: OverrunStrings): CachedCharts {
    const known = this.#charts;
    const same = known?.answer === answer && known.words === words;
    if (same && known.asked === asked) return known;
    const chance = same ? known.chance : answer.expected && chanceChart(answer.expected, words);
    return (this.#charts = { answer, asked, words, cost: costChart(answer, asked, words), chance });
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

  /** Picking a point of the curve chooses that overrun. */
  readonly #onPick = ({ index }: ChartPickEvent): void => {
    const minutes = this.answer && minutesShown(this.answer.curve)[index];
    if (typeof minutes === 'number') this.#ask(minutes);
  };

  readonly #onLeaves: ChangeLeaves = (resource, leaves) => {
    if (this.answer)
      this.dispatchEvent(new OnSiteChangeEvent(this.answer.at.window, resource, leaves));
  };

  readonly #onCompare = (event: Event): void => {
    event.preventDefault();
    const field = (event.target as HTMLFormElement).elements.namedItem('lengths');
    const parts = (field as HTMLInputElement).value
      .split(/[,;\s]+/)
      .filter((text) => text !== '')
      .map((text) => (/^\d{1,5}$/.test(text) ? Number(text) : NaN));
    this.#lengthsRefused =
      parts.length === 0 || parts.length > 12 || !parts.every((part) => part <= MOST_MINUTES);
    this.requestUpdate();
    if (!this.#lengthsRefused) this.dispatchEvent(new OverrunCompareEvent([...new Set(parts)]));
  };

  #ask(minutes: number): void {
    this.#refused = false;
    this.requestUpdate();
    if (minutes === (this.overrunMinutes ?? this.answer?.at.overrunMinutes)) return;
    this.overrunMinutes = minutes;
    this.dispatchEvent(new OverrunChangeEvent(minutes));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'possession-overrun': PossessionOverrun;
  }
}
