import { html, type TemplateResult } from 'lit';
import type { Dwelling, NoiseSettings } from '../../src/model/index.js';
import { checkField } from '../shared/fields/check-field.js';
import { choiceField } from '../shared/fields/choice-field.js';
import { numberField } from '../shared/fields/number-field.js';
import type { NoiseStrings } from './strings.js';

/**
 * The dwellings, the limits and what else the levels rest on, each to be changed, with the sources of the limits.
 *
 * @param change Called with the settings as changed.
 */
export function inputsForm(
  settings: NoiseSettings,
  words: NoiseStrings,
  change: (settings: NoiseSettings) => void,
): TemplateResult {
  const { limits, dwellings } = settings;
  const putDwelling = (at: number, part: Partial<Dwelling>): void =>
    change({
      ...settings,
      dwellings: dwellings.with(at, { ...dwellings[at]!, ...part }),
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
          ${choiceField({
            label: words.ground,
            value: one.ground,
            choices: [
              ['hard', words.hard],
              ['soft', words.soft],
            ],
            change: (ground) => putDwelling(at, { ground }),
          })}`,
      )}
      ${numberField({
        label: words.onTime,
        value: settings.onTimePercent,
        unit: words.ofTheTime,
        min: 1,
        max: 100,
        change: (onTimePercent) => change({ ...settings, onTimePercent }),
      })}
      ${limits.periods.map((one, at) =>
        numberField({
          label: words.limit(one.period),
          value: one.limitDb,
          unit: 'dB',
          min: 0,
          max: 200,
          change: (limitDb) =>
            change({
              ...settings,
              limits: { ...limits, periods: limits.periods.with(at, { ...one, limitDb }) },
            }),
        }),
      )}
    </div>
    ${checkField(words.use, settings.asClosedTime, (asClosedTime) => change({ ...settings, asClosedTime }))}
    <h3>${words.sources}</h3>
    <ul>
      ${limits.periods.map((one) => html`<li>${one.period}: ${one.source} (${one.sureness})</li>`)}
    </ul>
  </section>`;
}
