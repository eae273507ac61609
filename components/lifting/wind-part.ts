import { html, nothing, type TemplateResult } from 'lit';
import type { WindAnswer } from '../../src/engine/index.js';
import type { LiftingSettings } from '../../src/model/index.js';
import { exampleLine } from '../shared/example.js';
import { checkField } from '../shared/fields/check-field.js';
import { numberField } from '../shared/fields/number-field.js';
import { stretchText } from '../shared/format.js';
import { windPicture } from './wind-picture.js';
import type { LiftingStrings } from './strings.js';
import { windTable } from './wind-table.js';
import { saidWhy } from '../shared/said.js';

/**
 * The forecast against the limit for lifting, what it costs each window, and the figures of the limit to be changed.
 *
 * @param width CSS pixels of the picture.
 * @param put Called with the settings as changed.
 */
export function windPart(
  wind: WindAnswer,
  zone: string,
  width: number,
  words: LiftingStrings,
  put: (settings: LiftingSettings) => void,
): TemplateResult {
  const { settings } = wind;
  const change = (part: Partial<LiftingSettings>): void => put({ ...settings, ...part });
  const { load } = settings;
  return html`<section part="wind">
    <h3>${words.wind}</h3>
    ${exampleLine(wind.isExample, words, () => put(settings))}
    <p class="quiet">${words.source(settings.source, settings.sureness)}</p>
    <p>${wind.activities.length > 0 ? words.lifts(wind.activities.join(', ')) : words.noLifts}</p>
    <div class="picture">
      ${wind.gusts.length > 0 ? windPicture(wind, zone, width, words) : html`<p>${words.noForecast}</p>`}
    </div>
    ${wind.windows.length > 0 ? windTable(wind, words) : nothing}
    ${
      wind.stops.length > 0
        ? html`<h3>${words.why}</h3>
            <ul class="stops">
              ${wind.stops.map(
                (stop) =>
                  html`<li>
                    <strong>${stretchText(stop.start, stop.end, zone)}</strong>: ${saidWhy(stop)}
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
    ${checkField(words.use, settings.asClosedTime, (asClosedTime) => change({ asClosedTime }))}
  </section>`;
}
