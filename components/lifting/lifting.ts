import {
  css,
  html,
  LitElement,
  nothing,
  type PropertyDeclarations,
  type TemplateResult,
} from 'lit';
import type {
  ConcreteAnswer,
  CuringOfPour,
  LiftingAnswer,
  WindAnswer,
} from '../../src/engine/index.js';
import { durationText } from '../../src/calendar/index.js';
import { cautions, type ConcreteSettings, type LiftingSettings } from '../../src/model/index.js';
import { LimitsChangeEvent } from '../people/limits-change-event.js';
import { base } from '../shared/base.js';
import { cautionList, cautionStyles } from '../shared/cautions.js';
import { momentText, stretchText } from '../shared/format.js';
import { numberField, siteStyles } from '../shared/number-field.js';
import { WidthWatch } from '../shared/width-watch.js';
import { curingPicture, windPicture } from './pictures.js';
import { defaultStrings, type LiftingStrings } from './strings.js';

const styles = css`
  .curve {
    fill: none;
    stroke: var(--_act);
    stroke-width: 2;
    stroke-linejoin: round;
  }
  .limit {
    stroke: var(--_bad);
    stroke-width: 1.5;
    stroke-dasharray: 6 3;
  }
  svg text.limit-word,
  svg text.on-shut {
    fill: var(--_bad);
    font-weight: 650;
    paint-order: stroke;
    stroke: var(--_raised);
    stroke-width: 3;
  }
  svg text.on-shut {
    stroke: var(--_bad-wash);
  }
  .ready {
    fill: var(--_good);
  }
  @media (forced-colors: active) {
    .curve,
    .limit {
      stroke: CanvasText;
    }
    .ready {
      fill: CanvasText;
    }
    svg text.limit-word,
    svg text.on-shut {
      stroke: Canvas;
    }
  }
`;

const minutesOf = (pour: CuringOfPour): number | null =>
  pour.readyAt === null ? null : (pour.readyAt - pour.pouredAt) / 60_000;

/**
 * A forecast of wind against the limit for lifting, with the hours lost in each window, and concrete gaining strength
 * in the temperatures given, with the moment at which what waits for it may start.
 * @summary Hours lost to wind, and when concrete has cured.
 * @tag possession-lifting
 * @event {LimitsChangeEvent} possession-limits-change - A reader changed limits (`part` is `lifting` or `concrete`).
 * @csspart wind - The forecast against the limit.
 * @csspart curing - Concrete along time.
 * @csspart cautions - The cautions.
 */
export class PossessionLifting extends LitElement {
  static override readonly styles = [...base, cautionStyles, siteStyles, styles];
  static override readonly properties: PropertyDeclarations = {
    answer: { attribute: false },
    strings: { attribute: false },
  };

  declare answer: LiftingAnswer | null;
  declare strings: Partial<LiftingStrings>;

  readonly #frame = new WidthWatch(this, '.picture', 640);

  constructor() {
    super();
    this.answer = null;
    this.strings = {};
  }

  override render(): TemplateResult {
    const words = { ...defaultStrings, ...this.strings };
    const { answer } = this;
    if (!answer) return html`<p class="quiet"></p>`;
    return html`<div class="head"><h2>${words.title}</h2></div>
      ${cautionList(words.cautions, [...answer.cautions, ...cautions])}
      ${this.#wind(answer.wind, answer.zone, words)}
      ${this.#concrete(answer.concrete, answer.zone, words)}`;
  }

  #wind(wind: WindAnswer, zone: string, words: LiftingStrings): TemplateResult {
    const { settings } = wind;
    const change = (part: Partial<LiftingSettings>): void => {
      this.dispatchEvent(new LimitsChangeEvent('lifting', { ...settings, ...part }));
    };
    const { load } = settings;
    return html`<section part="wind">
      <h3>${words.wind}</h3>
      ${example(wind.isExample, words, () => change({}))}
      <p class="quiet">${words.source(settings.source, settings.sureness)}</p>
      <p>${wind.activities.length > 0 ? words.lifts(wind.activities.join(', ')) : words.noLifts}</p>
      <div class="picture">
        ${wind.gusts.length > 0 ? windPicture(wind, zone, this.#frame.width, words) : html`<p>${words.noForecast}</p>`}
      </div>
      ${wind.windows.length > 0 ? windTable(wind, words) : nothing}
      ${
        wind.stops.length > 0
          ? html`<h3>${words.why}</h3>
              <ul class="stops">
                ${wind.stops.map(
                  (one) =>
                    html`<li>
                      <strong>${stretchText(one.start, one.end, zone)}</strong>: ${one.why}
                    </li>`,
                )}
              </ul>`
          : nothing
      }
      <h3>${words.inputs}</h3>
      <div class="fields">
        ${numberField({
          label: words.chart,
          value: settings.chartLimitMps,
          unit: 'm/s',
          min: 1,
          max: 60,
          change: (chartLimitMps) => change({ chartLimitMps }),
        })}
        ${numberField({
          label: words.height,
          value: settings.heightMetres,
          unit: 'm',
          min: 1,
          max: 500,
          change: (heightMetres) => change({ heightMetres }),
        })}
        ${numberField({
          label: words.settle,
          value: settings.settleMinutes,
          unit: 'min',
          min: 0,
          max: 1440,
          step: 1,
          change: (settleMinutes) => change({ settleMinutes }),
        })}
        ${
          load
            ? html`${numberField({ label: words.tonnes, value: load.tonnes, unit: 't', min: 0.1, max: 5000, change: (tonnes) => change({ load: { ...load, tonnes } }) })}
              ${numberField({ label: words.area, value: load.areaM2, unit: 'm²', min: 0.1, max: 5000, change: (areaM2) => change({ load: { ...load, areaM2 } }) })}
              ${numberField({ label: words.drag, value: load.drag, unit: '', min: 0.1, max: 5, change: (drag) => change({ load: { ...load, drag } }) })}`
            : nothing
        }
      </div>
      <label class="field check"
        ><input
          type="checkbox"
          .checked=${settings.asClosedTime}
          @change=${(event: Event) => change({ asClosedTime: (event.currentTarget as HTMLInputElement).checked })}
        /><span>${words.use}</span></label
      >
    </section>`;
  }

  #concrete(concrete: ConcreteAnswer, zone: string, words: LiftingStrings): TemplateResult {
    const { settings, pours, unit } = concrete;
    const change = (part: Partial<ConcreteSettings>): void => {
      this.dispatchEvent(new LimitsChangeEvent('concrete', { ...settings, ...part }));
    };
    return html`<section part="curing">
      <h3>${words.concrete}</h3>
      ${example(concrete.isExample, words, () => change({}))}
      <p class="quiet">
        ${words.model}: ${settings.model.model}. ${words.source(settings.source, settings.sureness)}
      </p>
      ${
        pours.length === 0
          ? html`<p>${words.noPours}</p>`
          : html`${pours.map(
              (pour) =>
                html`<figure>
                  <figcaption>${pour.activity}</figcaption>
                  ${curingPicture(pour, zone, unit, this.#frame.width, words)}
                </figure>`,
            )}
            ${curingTable(pours, zone, words)}`
      }
      <div class="fields">
        ${numberField({
          label: words.needed,
          value: settings.maturity,
          unit,
          min: 1,
          max: 100_000,
          change: (maturity) => change({ maturity }),
        })}
        <label class="field"
          ><span>${words.otherwise}</span>
          <span class="entry"
            ><input
              type="number"
              min="-70"
              max="110"
              step="any"
              .value=${settings.otherwiseC === undefined ? '' : String(settings.otherwiseC)}
              @change=${(event: Event) => {
                const input = event.currentTarget as HTMLInputElement;
                if (!input.reportValidity()) return;
                const { otherwiseC: _, ...rest } = settings;
                const value =
                  input.value === '' ? rest : { ...rest, otherwiseC: input.valueAsNumber };
                this.dispatchEvent(new LimitsChangeEvent('concrete', value));
              }}
            /><span class="unit">°C</span></span
          ></label
        >
      </div>
    </section>`;
  }
}

function example(
  isExample: boolean,
  words: LiftingStrings,
  take: () => void,
): TemplateResult | typeof nothing {
  if (!isExample) return nothing;
  return html`<div class="example">
    <p>${words.example}</p>
    <button type="button" @click=${take}>${words.take}</button>
  </div>`;
}

function windTable({ windows }: WindAnswer, words: LiftingStrings): TemplateResult {
  return html`<h3>${words.lost}</h3>
    <table class="cards lost">
      <thead>
        <tr>
          <th scope="col">${words.window}</th>
          <th scope="col">${words.lostHead}</th>
          <th scope="col">${words.openHead}</th>
          <th scope="col">${words.unknownHead}</th>
          <th scope="col">${words.highest}</th>
        </tr>
      </thead>
      <tbody>
        ${windows.map((one) => {
          const unknown = one.unknown.reduce((sum, gap) => sum + (gap.end - gap.start) / 60_000, 0);
          return html`<tr>
            <th scope="row">
              ${one.window}<span class="source">${stretchText(one.start, one.end, one.zone)}</span>
            </th>
            <td class=${one.lostMinutes > 0 ? 'bad-text' : ''}>
              <span class="narrow">${words.lostHead}: </span
              >${one.lostMinutes > 0 ? durationText(one.lostMinutes) : words.none}
            </td>
            <td><span class="narrow">${words.openHead}: </span>${durationText(one.openMinutes)}</td>
            <td>
              <span class="narrow">${words.unknownHead}: </span
              >${unknown > 0 ? durationText(unknown) : words.none}
            </td>
            <td>
              <span class="narrow">${words.highest}: </span
              >${one.highestGustMps === undefined ? '' : `${one.highestGustMps.toFixed(1)} m/s`}
            </td>
          </tr>`;
        })}
      </tbody>
    </table>`;
}

function curingTable(
  pours: readonly CuringOfPour[],
  zone: string,
  words: LiftingStrings,
): TemplateResult {
  return html`<table class="cards curing">
    <thead>
      <tr>
        <th scope="col">${words.activity}</th>
        <th scope="col">${words.pour}</th>
        <th scope="col">${words.ready}</th>
        <th scope="col">${words.takes}</th>
        <th scope="col">${words.planGap}</th>
      </tr>
    </thead>
    <tbody>
      ${pours.map((pour) => {
        const takes = minutesOf(pour);
        const guessed = pour.assumed.reduce((sum, one) => sum + (one.end - one.start) / 60_000, 0);
        const short = takes !== null && pour.gapMinutes !== null ? takes - pour.gapMinutes : 0;
        return html`<tr>
          <th scope="row">
            ${pour.activity}<span class="source">${words.waits(pour.followers.join(', '))}</span>
          </th>
          <td><span class="narrow">${words.pour}: </span>${momentText(pour.pouredAt, zone)}</td>
          <td class=${pour.readyAt === null ? 'bad-text' : ''}>
            <span class="narrow">${words.ready}: </span
            >${pour.readyAt === null ? words.notKnown : momentText(pour.readyAt, zone)}
            ${guessed > 0 ? html`<span class="source">${words.assumed(durationText(guessed))}</span>` : nothing}
          </td>
          <td>
            <span class="narrow">${words.takes}: </span>${takes === null ? '' : durationText(takes)}
          </td>
          <td>
            <span class="narrow">${words.planGap}: </span
            >${pour.gapMinutes === null ? words.none : durationText(pour.gapMinutes)}
            ${short > 0 ? html`<span class="bad-text">${words.short(durationText(short))}</span>` : nothing}
          </td>
        </tr>`;
      })}
    </tbody>
  </table>`;
}

declare global {
  interface HTMLElementTagNameMap {
    'possession-lifting': PossessionLifting;
  }
}
