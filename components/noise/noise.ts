import { html, LitElement, type PropertyDeclarations, type TemplateResult } from 'lit';
import type { NoiseAnswer, NoiseOfActivity } from '../../src/engine/index.js';
import { weekdays, type NoiseSettings, type Weekday } from '../../src/model/index.js';
import { LimitsChangeEvent } from '../people/limits-change-event.js';
import { base } from '../shared/base.js';
import { cautionList, cautionStyles } from '../shared/cautions.js';
import { exampleLine } from '../shared/example.js';
import { siteStyles } from '../shared/site.styles.js';
import { paper, PORTRAIT } from '../shared/paper.js';
import { PrintWatch } from '../shared/print-watch.js';
import { WidthWatch } from '../shared/width-watch.js';
import { consentTable } from './consent-table.js';
import { hoursPicture } from './hours-picture.js';
import { inputsForm } from './inputs-form.js';
import { levelsTable } from './levels-table.js';
import { styles } from './noise.styles.js';
import { defaultStrings, type NoiseStrings } from './strings.js';
import { weekdayText } from '../shared/format.js';
import { Words } from '../shared/words.js';
import { said } from '../shared/said.js';

/**
 * In which hours each activity may be loud, by a screening of its plant against the user's limits, with the levels, what
 * they come from, and by when to apply for prior consent.
 * @summary Hours in which work may be loud.
 * @tag possession-noise
 * @event {LimitsChangeEvent} possession-limits-change - A reader changed limits or inputs (`part` is `noise`).
 * @csspart picture - The hours of a day by activity.
 * @csspart cautions - The cautions.
 */
export class PossessionNoise extends LitElement {
  static override readonly styles = [...base, cautionStyles, ...siteStyles, styles, paper];
  static override readonly properties: PropertyDeclarations = {
    answer: { attribute: false },
    day: { type: String },
    strings: { attribute: false },
  };

  declare answer: NoiseAnswer | null;
  /** Day of the week that is drawn. */
  declare day: Weekday;
  declare strings: Partial<NoiseStrings>;

  readonly #words = new Words<NoiseStrings>(this, defaultStrings, {
    de: () => import('./strings.de.js'),
  });

  readonly #frame = new WidthWatch(this, '.picture', 640);
  readonly #print = new PrintWatch(this, () => this.performUpdate());

  constructor() {
    super();
    this.answer = null;
    this.day = 'mon';
    this.strings = {};
  }

  override render(): TemplateResult {
    const words = this.#words.now;
    const { answer } = this;
    if (!answer) return html`<p class="quiet"></p>`;
    const { settings, activities } = answer;
    return html`<div class="head">
        <h2>${words.title}</h2>
        <p class="quiet">${words.by(settings.limits.name)}</p>
        <p>
          <strong
            >${said({ text: answer.caution, sentence: { key: 'noise-screening', given: {} } })}</strong
          >
        </p>
        ${exampleLine(answer.isExample, words, () => this.#change(settings))}
      </div>
      ${cautionList(words.cautions, words.cautionLines)}
      ${
        activities.length === 0
          ? html`<section><p>${words.empty}</p></section>`
          : html`${this.#picture(activities, words)} ${levelsTable(activities, settings, words)}`
      }
      ${inputsForm(settings, words, (changed) => this.#change(changed))}
      ${consentTable(answer, words)}`;
  }

  #change(value: NoiseSettings): void {
    this.dispatchEvent(new LimitsChangeEvent('noise', value));
  }

  #picture(activities: readonly NoiseOfActivity[], words: NoiseStrings): TemplateResult {
    return html`<section part="picture">
      <h3>${words.picture}</h3>
      <div class="choice" role="group" aria-label=${words.day}>
        ${weekdays.map(
          (day) =>
            html`<button
              type="button"
              data-day=${day}
              aria-pressed=${this.day === day}
              @click=${() => {
                this.day = day;
              }}
            >
              ${weekdayText(1 + weekdays.indexOf(day))}
            </button>`,
        )}
      </div>
      <p class="on-paper">${weekdayText(1 + weekdays.indexOf(this.day))}</p>
      <div class="picture">
        ${hoursPicture(activities, this.day, this.#print.printing ? PORTRAIT - 40 : this.#frame.width, words)}
      </div>
    </section>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'possession-noise': PossessionNoise;
  }
}
