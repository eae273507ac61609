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
        (dwelling, at) =>
          html`${numberField({
            label: words.metres(dwelling.name),
            value: dwelling.metres,
            unit: 'm',
            min: 1,
            max: 100_000,
            change: (metres) => putDwelling(at, { metres }),
          })}
          ${numberField({
            label: words.screening,
            value: dwelling.screeningDb,
            unit: 'dB',
            min: 0,
            max: 60,
            change: (screeningDb) => putDwelling(at, { screeningDb }),
          })}
          ${choiceField({
            label: words.ground,
            value: dwelling.ground,
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
      ${limits.periods.map((period, at) =>
        numberField({
          label: words.limit(period.period),
          value: period.limitDb,
          unit: 'dB',
          min: 0,
          max: 200,
          change: (limitDb) =>
            change({
              ...settings,
              limits: { ...limits, periods: limits.periods.with(at, { ...period, limitDb }) },
            }),
        }),
      )}
    </div>
    ${checkField(words.use, settings.asClosedTime, (asClosedTime) => change({ ...settings, asClosedTime }))}
    <h3>${words.sources}</h3>
    <ul>
      ${limits.periods.map((period) => html`<li>${period.period}: ${period.source} (${period.sureness})</li>`)}
    </ul>
  </section>`;
}
