import { html, nothing, type TemplateResult } from 'lit';
import type { NoiseAnswer } from '../../src/engine/index.js';
import { dayText } from '../shared/format.js';
import type { NoiseStrings } from './strings.js';

/** By when to talk to the council and to apply for prior consent, window by window; nothing where none is needed. */
export function consentTable(
  { consent }: NoiseAnswer,
  words: NoiseStrings,
): TemplateResult | typeof nothing {
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
          (item) =>
            html`<tr>
              <th scope="row">${item.window}</th>
              <td><span class="narrow">${words.talk}: </span>${dayText(item.talkBy, item.zone)}</td>
              <td>
                <span class="narrow">${words.apply}: </span>${dayText(item.applyBy, item.zone)}
              </td>
              <td class=${item.state === 'in time' ? '' : 'bad-text'}>
                ${words.states[item.state]}
              </td>
            </tr>`,
        )}
      </tbody>
    </table>
  </section>`;
}
