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
          (one) =>
            html`<tr>
              <th scope="row">${one.window}</th>
              <td><span class="narrow">${words.talk}: </span>${dayText(one.talkBy, one.zone)}</td>
              <td><span class="narrow">${words.apply}: </span>${dayText(one.applyBy, one.zone)}</td>
              <td class=${one.state === 'in time' ? '' : 'bad-text'}>${one.state}</td>
            </tr>`,
        )}
      </tbody>
    </table>
  </section>`;
}
