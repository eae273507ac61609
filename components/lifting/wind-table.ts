import { html, type TemplateResult } from 'lit';
import { durationText, totalMinutes } from '../../src/calendar/index.js';
import type { WindAnswer } from '../../src/engine/index.js';
import { stretchText, numberText } from '../shared/format.js';
import type { LiftingStrings } from './strings.js';

/** The hours of each window that wind takes, leaves and is not forecast for. */
export function windTable({ windows }: WindAnswer, words: LiftingStrings): TemplateResult {
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
        ${windows.map((window) => {
          const unknown = totalMinutes(window.unknown);
          return html`<tr>
            <th scope="row">
              ${window.window}<span class="source"
                >${stretchText(window.start, window.end, window.zone)}</span
              >
            </th>
            <td class=${window.lostMinutes > 0 ? 'bad-text' : ''}>
              <span class="narrow">${words.lostHead}: </span
              >${window.lostMinutes > 0 ? durationText(window.lostMinutes) : words.none}
            </td>
            <td>
              <span class="narrow">${words.openHead}: </span>${durationText(window.openMinutes)}
            </td>
            <td>
              <span class="narrow">${words.unknownHead}: </span
              >${unknown > 0 ? durationText(unknown) : words.none}
            </td>
            <td>
              <span class="narrow">${words.highest}: </span
              >${window.highestGustMps === undefined ? '' : `${numberText(window.highestGustMps, 1)} m/s`}
            </td>
          </tr>`;
        })}
      </tbody>
    </table>`;
}
