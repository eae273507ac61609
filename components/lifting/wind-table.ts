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
        ${windows.map((one) => {
          const unknown = totalMinutes(one.unknown);
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
              >${one.highestGustMps === undefined ? '' : `${numberText(one.highestGustMps, 1)} m/s`}
            </td>
          </tr>`;
        })}
      </tbody>
    </table>`;
}
