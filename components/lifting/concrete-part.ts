import { html, type TemplateResult } from 'lit';
import type { ConcreteAnswer } from '../../src/engine/index.js';
import type { ConcreteSettings } from '../../src/model/index.js';
import { exampleLine } from '../shared/example.js';
import { numberField } from '../shared/fields/number-field.js';
import { curingTable } from './curing-table.js';
import { curingPicture } from './curing-picture.js';
import type { LiftingStrings } from './strings.js';

/**
 * Concrete gaining strength pour by pour, and the figures that say when it is strong enough, to be changed.
 *
 * @param width CSS pixels of the pictures.
 * @param put Called with the settings as changed.
 */
export function concretePart(
  concrete: ConcreteAnswer,
  zone: string,
  width: number,
  words: LiftingStrings,
  put: (settings: ConcreteSettings) => void,
): TemplateResult {
  const { settings, pours, unit } = concrete;
  return html`<section part="curing">
    <h3>${words.concrete}</h3>
    ${exampleLine(concrete.isExample, words, () => put(settings))}
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
                ${curingPicture(pour, zone, unit, width, words)}
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
        change: (maturity) => put({ ...settings, maturity }),
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
              put(input.value === '' ? rest : { ...rest, otherwiseC: input.valueAsNumber });
            }}
          /><span class="unit">°C</span></span
        ></label
      >
    </div>
  </section>`;
}
