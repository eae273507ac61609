import {
  css,
  html,
  LitElement,
  nothing,
  type PropertyDeclarations,
  type TemplateResult,
} from 'lit';
import type { NoiseAnswer, NoiseOfActivity } from '../../src/engine/index.js';
import {
  weekdays,
  type Dwelling,
  type NoiseSettings,
  type Weekday,
} from '../../src/model/index.js';
import { LimitsChangeEvent } from '../people/limits-change-event.js';
import { base } from '../shared/base.js';
import { cautionList, cautionStyles } from '../shared/cautions.js';
import { dayText } from '../shared/format.js';
import { numberField, siteStyles } from '../shared/number-field.js';
import { WidthWatch } from '../shared/width-watch.js';
import { hoursPicture, isOver } from './hours-picture.js';
import { defaultStrings, type NoiseStrings } from './strings.js';

const styles = css`
  .open {
    fill: var(--_usable);
  }
  .not-known {
    fill: none;
    stroke: var(--_rule);
    stroke-dasharray: 3 2;
  }
  svg text.on-open {
    fill: var(--_on-usable);
  }
  svg text.on-shut {
    fill: var(--_bad);
    font-weight: 650;
    paint-order: stroke;
    stroke: var(--_bad-wash);
    stroke-width: 4;
  }
  @media (forced-colors: active) {
    .open {
      fill: CanvasText;
    }
    svg text.on-open {
      fill: Canvas;
    }
    svg text.on-shut {
      stroke: Canvas;
    }
  }
`;

const db = (level: number): string => level.toFixed(1);

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
  static override readonly styles = [...base, cautionStyles, siteStyles, styles];
  static override readonly properties: PropertyDeclarations = {
    answer: { attribute: false },
    day: { type: String },
    strings: { attribute: false },
  };

  declare answer: NoiseAnswer | null;
  /** Day of the week that is drawn. */
  declare day: Weekday;
  declare strings: Partial<NoiseStrings>;

  readonly #frame = new WidthWatch(this, '.picture', 640);

  constructor() {
    super();
    this.answer = null;
    this.day = 'mon';
    this.strings = {};
  }

  override render(): TemplateResult {
    const words = { ...defaultStrings, ...this.strings };
    const { answer } = this;
    if (!answer) return html`<p class="quiet"></p>`;
    const { settings, activities } = answer;
    return html`<div class="head">
        <h2>${words.title}</h2>
        <p class="quiet">${words.by(settings.limits.name)}</p>
        <p><strong>${answer.caution}</strong></p>
        ${
          answer.isExample
            ? html`<div class="example">
                <p>${words.example}</p>
                <button type="button" @click=${() => this.#change(settings)}>${words.take}</button>
              </div>`
            : nothing
        }
      </div>
      ${cautionList(words.cautions)}
      ${
        activities.length === 0
          ? html`<section><p>${words.empty}</p></section>`
          : html`${this.#picture(activities, words)} ${this.#levels(activities, settings, words)}`
      }
      ${this.#inputs(settings, words)} ${this.#consent(answer, words)}`;
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
              ${words.days[day]}
            </button>`,
        )}
      </div>
      <div class="picture">${hoursPicture(activities, this.day, this.#frame.width, words)}</div>
    </section>`;
  }

  #levels(
    activities: readonly NoiseOfActivity[],
    { limits }: NoiseSettings,
    words: NoiseStrings,
  ): TemplateResult {
    return html`<section>
      <h3>${words.levels}</h3>
      <table class="cards levels">
        <thead>
          <tr>
            <th scope="col">${words.activity}</th>
            ${limits.periods.map((one) => html`<th scope="col">${one.period}</th>`)}
          </tr>
        </thead>
        <tbody>
          ${activities.map(
            (one) =>
              html`<tr>
                <th scope="row">
                  ${one.activity} ${one.title}
                  ${
                    one.plant.length > 0
                      ? html`<span class="source"
                          >${words.plant(one.plant.map((each) => `${each.count} × ${each.plant}`).join(', '))}</span
                        >`
                      : nothing
                  }
                  ${one.notListed.length > 0 ? html`<span class="source">${words.notListed(one.notListed.join(', '))}</span>` : nothing}
                </th>
                ${limits.periods.map((period, at) => {
                  const worst = one.worst[at];
                  if (!worst)
                    return html`<td>
                      <span class="narrow">${period.period}: </span>${words.unknown}
                    </td>`;
                  const text = isOver(worst)
                    ? words.over(db(worst.overDb), db(worst.levelDb), db(worst.limitDb))
                    : words.within(db(worst.levelDb), db(worst.limitDb));
                  return html`<td class=${isOver(worst) ? 'bad-text' : 'good-text'}>
                    <span class="narrow">${period.period}: </span>${text}<span class="source"
                      >${worst.dwelling}</span
                    >
                  </td>`;
                })}
              </tr>`,
          )}
        </tbody>
      </table>
    </section>`;
  }

  #inputs(settings: NoiseSettings, words: NoiseStrings): TemplateResult {
    const { limits, dwellings } = settings;
    const putDwelling = (at: number, change: Partial<Dwelling>): void =>
      this.#change({
        ...settings,
        dwellings: dwellings.with(at, { ...dwellings[at]!, ...change }),
      });
    return html`<section>
      <h3>${words.inputs}</h3>
      <div class="fields">
        ${dwellings.map(
          (one, at) =>
            html`${numberField({
                label: words.metres(one.name),
                value: one.metres,
                unit: 'm',
                min: 1,
                max: 100_000,
                change: (metres) => putDwelling(at, { metres }),
              })}
              ${numberField({
                label: words.screening,
                value: one.screeningDb,
                unit: 'dB',
                min: 0,
                max: 60,
                change: (screeningDb) => putDwelling(at, { screeningDb }),
              })}
              <label class="field"
                ><span>${words.ground}</span>
                <select
                  @change=${(event: Event) =>
                    putDwelling(at, {
                      ground: (event.currentTarget as HTMLSelectElement)
                        .value as Dwelling['ground'],
                    })}
                >
                  <option value="hard" ?selected=${one.ground === 'hard'}>${words.hard}</option>
                  <option value="soft" ?selected=${one.ground === 'soft'}>${words.soft}</option>
                </select></label
              >`,
        )}
        ${numberField({
          label: words.onTime,
          value: settings.onTimePercent,
          unit: '% of the time',
          min: 1,
          max: 100,
          change: (onTimePercent) => this.#change({ ...settings, onTimePercent }),
        })}
        ${limits.periods.map((one, at) =>
          numberField({
            label: words.limit(one.period),
            value: one.limitDb,
            unit: 'dB',
            min: 0,
            max: 200,
            change: (limitDb) =>
              this.#change({
                ...settings,
                limits: { ...limits, periods: limits.periods.with(at, { ...one, limitDb }) },
              }),
          }),
        )}
      </div>
      <label class="field check"
        ><input
          type="checkbox"
          .checked=${settings.asClosedTime}
          @change=${(event: Event) =>
            this.#change({
              ...settings,
              asClosedTime: (event.currentTarget as HTMLInputElement).checked,
            })}
        /><span>${words.use}</span></label
      >
      <h3>${words.sources}</h3>
      <ul>
        ${limits.periods.map((one) => html`<li>${one.period}: ${one.source} (${one.sureness})</li>`)}
      </ul>
    </section>`;
  }

  #consent({ consent }: NoiseAnswer, words: NoiseStrings): TemplateResult | typeof nothing {
    if (consent.length === 0) return nothing;
    return html`<section>
      <h3>${words.consent}</h3>
      <table class="cards">
        <thead>
          <tr>
            <th scope="col">${words.window}</th>
            <th scope="col">${words.talk}</th>
            <th scope="col">${words.apply}</th>
            <th scope="col">${words.state}</th>
          </tr>
        </thead>
        <tbody>
          ${consent.map(
            (one) =>
              html`<tr>
                <th scope="row">${one.window}</th>
                <td><span class="narrow">${words.talk}: </span>${dayText(one.talkBy, one.zone)}</td>
                <td>
                  <span class="narrow">${words.apply}: </span>${dayText(one.applyBy, one.zone)}
                </td>
                <td class=${one.state === 'in time' ? '' : 'bad-text'}>${one.state}</td>
              </tr>`,
          )}
        </tbody>
      </table>
    </section>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'possession-noise': PossessionNoise;
  }
}
