import { html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import {
  type OptionsAnswer,
  type OwnOption,
  type PricedOption,
  type Progress,
  type StopOutlook,
} from '../../src/engine/index.js';
import type { AccessWindow, Activity, Resource } from '../../src/model/index.js';
import { moneyText } from '../overrun/money-text.js';
import { base } from '../shared/base.js';
import { paper } from '../shared/paper.js';
import { cautionList, cautionStyles } from '../shared/cautions.js';
import { progressStyle } from '../shared/progress-style.js';
import { clockText, dayText, numberText } from '../shared/format.js';
import '../chart/define.js';
import type { ChartShown } from '../chart/shown.js';
import { ReportAskEvent } from '../report/report-events.js';
import { optionsChart, stopChart } from './charts.js';
import { optionRow } from './option-row.js';
import { OptionTakeEvent } from './option-take-event.js';
import { OptionsAskEvent } from './options-ask-event.js';
import { OptionsStopEvent } from './options-stop-event.js';
import { ownForm } from './own-form.js';
import { OwnOptionsChangeEvent } from './own-options-change-event.js';
import { styles } from './options.styles.js';
import { defaultStrings, type OptionsStrings } from './strings.js';
import { percentText } from '../shared/chance.js';
import { saidText } from '../shared/said.js';
import { nameText } from '../shared/name.js';
import { Words } from '../shared/words.js';

/**
 * Compares ways to do the work of a window, each with its cost, its chance of handing back on time and how both are
 * calculated; also after how many units it is best to stop.
 *
 * @summary Options of a window, scheduled, simulated and priced.
 * @tag possession-options
 * @event {OptionsAskEvent} possession-options-ask - A reader asks for the options.
 * @event {OptionsStopEvent} possession-options-stop - A reader no longer wants them.
 * @event {OptionTakeEvent} possession-option-take - A reader takes one into the plan.
 * @event {OwnOptionsChangeEvent} possession-own-options-change - A reader makes an option of their own, or takes one
 * out.
 * @event {ReportAskEvent} possession-report-ask - A reader wants a report.
 * @csspart option - One option.
 * @csspart take - The button that takes one into the plan.
 * @csspart cautions - The cautions.
 */
export class PossessionOptions extends LitElement {
  static override readonly styles = [...base, cautionStyles, progressStyle, ...styles, paper];
  static override readonly properties: PropertyDeclarations = {
    answer: { attribute: false },
    window: { attribute: false },
    busy: { type: Boolean },
    progress: { attribute: false },
    own: { attribute: false },
    activities: { attribute: false },
    resources: { attribute: false },
    readonly: { type: Boolean },
    strings: { attribute: false },
  };

  declare answer: OptionsAnswer | null;
  /** The window of the options, for title and zone. */
  declare window: AccessWindow | null;
  declare busy: boolean;
  declare progress: Progress | null;
  /** Options defined by a reader and calculated with the others: `OptionsRequest.own`. */
  declare own: readonly OwnOption[];
  /** Work of the plan that an option can leave out; only work that the answer has in the window is offered. */
  declare activities: readonly Activity[];
  /** Plant and labour of the plan, of which an option can add more. */
  declare resources: readonly Resource[];
  /** Whether options cannot be taken into the plan; the host says why. */
  declare readonly: boolean;
  /** Texts that override the defaults. */
  declare strings: Partial<OptionsStrings>;

  readonly #words = new Words<OptionsStrings>(this, defaultStrings, {
    de: () => import('./strings.de.js'),
  });

  #refused = false;
  /** Cached charts of the current answer. */
  #charts:
    | {
        answer: OptionsAnswer;
        words: OptionsStrings;
        all: ChartShown;
        stop: ChartShown | null;
      }
    | undefined;

  constructor() {
    super();
    this.answer = null;
    this.window = null;
    this.busy = false;
    this.progress = null;
    this.own = [];
    this.activities = [];
    this.resources = [];
    this.readonly = false;
    this.strings = {};
  }

  override render(): TemplateResult {
    const words = this.#words.now;
    const { answer } = this;
    const zone = this.window?.zone ?? 'UTC';
    return html`<header>
        <h2>${words.title}</h2>
        ${this.window ? html`<p class="quiet">${nameText(this.window)}</p>` : nothing}
        ${this.#renderForm(words)} ${this.#renderOwn(words)}
      </header>
      ${cautionList(words.cautions, words.cautionLines)}
      ${
        answer
          ? html`<section aria-busy=${this.busy}>
                <p class="quiet told">
                  ${words.runs(numberText(answer.runs), String(answer.seed))}
                  <button
                    type="button"
                    class="on-screen"
                    @click=${() => this.dispatchEvent(new ReportAskEvent())}
                  >
                    ${words.report}
                  </button>
                </p>
                <div class="compared">
                  <possession-chart
                    class="options-chart"
                    .shown=${this.#chartsOf(answer, words).all}
                  ></possession-chart>
                  <ul class="options">
                    ${answer.options.map((option) =>
                      optionRow(option, {
                        answer,
                        zone,
                        strings: words,
                        readonly: this.readonly,
                        take: this.#onTake,
                      }),
                    )}
                  </ul>
                </div>
              </section>
              ${
                answer.breakEvens.length === 0
                  ? nothing
                  : html`<section class="turns">
                      <h3>${words.turns}</h3>
                      <ul>
                        ${answer.breakEvens.map((breakEven) => html`<li>${saidText(breakEven.text)}</li>`)}
                      </ul>
                    </section>`
              }
              ${this.#renderStop(answer, zone, words)}
              <section>
                <h3>${words.notes}</h3>
                ${answer.notes.map((note) => html`<p>${saidText(note)}</p>`)}
              </section>
              ${
                answer.notPriced.length === 0
                  ? nothing
                  : html`<section>
                      <h3>${words.notPriced}</h3>
                      <ul>
                        ${answer.notPriced.map((phrase) => html`<li>${saidText(phrase)}</li>`)}
                      </ul>
                    </section>`
              }`
          : html`<p class="empty quiet">${words.empty}</p>`
      }`;
  }

  #chartsOf(
    answer: OptionsAnswer,
    words: OptionsStrings,
  ): { readonly all: ChartShown; readonly stop: ChartShown | null } {
    if (this.#charts?.answer === answer && this.#charts.words === words) return this.#charts;
    const all = optionsChart(answer, words);
    const stop = answer.stop && stopChart(answer.stop, answer, words);
    this.#charts = { answer, words, all, stop };
    return this.#charts;
  }

  #renderForm(words: OptionsStrings): TemplateResult {
    const { answer, progress } = this;
    return html`<form @submit=${this.#onAsk} novalidate>
      <label
        >${words.longer}
        <input name="longer" type="number" min="1" max="2880" value="60" inputmode="numeric"
      /></label>
      <label
        >${words.later}
        <input name="days" type="number" min="1" max="365" value="7" inputmode="numeric"
      /></label>
      ${
        answer && answer.repeated.length > 1
          ? html`<label
              >${words.activity}
              <select name="activity">
                <option value="">${words.choose}</option>
                ${answer.repeated.map(
                  (item) =>
                    html`<option value=${item.activity}>${item.activity} ${item.title}</option>`,
                )}
              </select></label
            >`
          : nothing
      }
      ${
        this.busy
          ? html`<button type="button" @click=${() => this.dispatchEvent(new OptionsStopEvent())}>
                ${words.stop}
              </button>
              <progress
                aria-label=${words.working}
                max=${progress?.total ?? 1}
                value=${progress?.done ?? nothing}
              ></progress>`
          : html`<button class="strong" type="submit">${words.ask}</button>`
      }
      <p class="refused" role="status">${this.#refused ? words.refused : nothing}</p>
    </form>`;
  }

  /** Needs the window for times to type, and an answer for what is planned in it. */
  #renderOwn(words: OptionsStrings): TemplateResult | typeof nothing {
    const { window, answer, own, activities, resources } = this;
    if (!window) return nothing;
    const asPlanned = answer?.window === window.id ? answer.options[0] : undefined;
    const planned = new Map<string, number>();
    if (asPlanned?.state === 'priced')
      for (const placement of asPlanned.here)
        planned.set(
          placement.activity,
          (planned.get(placement.activity) ?? 0) + (placement.units ?? 1),
        );
    return ownForm({
      ...{ window, own, planned, activities, resources, words },
      change: (next) => {
        this.own = next;
        this.dispatchEvent(new OwnOptionsChangeEvent(next));
      },
    });
  }

  #renderStop(answer: OptionsAnswer, zone: string, words: OptionsStrings): TemplateResult {
    const { stop } = answer;
    if (!stop)
      return html`<section>
        <h3>${words.stopTitle}</h3>
        <p class="quiet">${saidText(answer.noStop)}</p>
      </section>`;
    return html`<section>
      <h3>${words.stopTitle}</h3>
      <p>
        ${stop.activity} ${stop.title}.
        ${words.stopTold(String(stop.bestUnits), clockText(stop.bestStopAt, zone))}
      </p>
      <possession-chart
        class="stop-chart"
        .shown=${this.#chartsOf(answer, words).stop}
      ></possession-chart>
      ${this.#renderStopTable(stop, answer, zone, words)}
    </section>`;
  }

  #renderStopTable(
    stop: StopOutlook,
    { currency, runs }: OptionsAnswer,
    zone: string,
    words: OptionsStrings,
  ): TemplateResult {
    return html`<div class="scroll" tabindex="0" role="region" aria-label=${words.stopTitle}>
      <table class="stop-table">
        <thead>
          <tr>
            <th scope="col" class="figure">${words.units}</th>
            <th scope="col">${words.doneBy}</th>
            <th scope="col" class="figure">${words.onTime}</th>
            <th scope="col" class="figure">${words.overrun}</th>
            <th scope="col" class="figure">${words.again}</th>
            <th scope="col" class="figure">${words.total}, ${currency}</th>
            <th scope="col" class="figure">${words.oneMore}</th>
            <th scope="col">${words.rest}</th>
          </tr>
        </thead>
        <tbody>
          ${stop.rows.map(
            (row) =>
              html`<tr class=${row.units === stop.bestUnits ? 'best' : ''}>
                <th scope="row" class="figure">
                  ${row.units}${row.units === stop.bestUnits ? ` (${words.best})` : nothing}
                </th>
                <td>${clockText(row.stopAt, zone)}</td>
                <td class="figure">${percentText(row.onTime.probability, runs)}</td>
                <td class="figure">${moneyText(row.expectedOverrunCost)}</td>
                <td class="figure">${moneyText(row.reBooking)}</td>
                <td class="figure">
                  ${moneyText(row.expectedTotal)}
                  <span class="quiet">&plusmn;${moneyText(row.standardError)}</span>
                </td>
                <td class="figure">${row.oneMore === null ? nothing : moneyText(row.oneMore)}</td>
                <td>
                  ${row.moved
                    .map(
                      (each) =>
                        `${each.units} ${each.activity}: ${each.window ?? words.outside}, ${dayText(each.from, zone)}`,
                    )
                    .join('; ')}
                  ${row.unplacedUnits > 0 ? words.noWindow(String(row.unplacedUnits)) : nothing}
                  ${row.inProportion ? `(${words.inProportion})` : nothing}
                </td>
              </tr>`,
          )}
        </tbody>
      </table>
    </div>`;
  }

  readonly #onTake = (option: PricedOption): void => {
    this.dispatchEvent(new OptionTakeEvent(option));
  };

  readonly #onAsk = (event: Event): void => {
    event.preventDefault();
    const form = event.target as HTMLFormElement;
    const field = (name: string) => form.elements.namedItem(name) as HTMLInputElement | null;
    const [longer, days] = [field('longer')!.valueAsNumber, field('days')!.valueAsNumber];
    this.#refused = ![longer, days].every((value) => Number.isInteger(value) && value >= 1);
    this.requestUpdate();
    if (this.#refused) return;
    this.dispatchEvent(
      new OptionsAskEvent({
        longerMinutes: longer,
        splitDaysLater: days,
        activity: field('activity')?.value ?? '',
      }),
    );
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'possession-options': PossessionOptions;
  }
}
