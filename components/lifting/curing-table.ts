import { html, nothing, type TemplateResult } from 'lit';
import { durationText, minutesBetween, totalMinutes } from '../../src/calendar/index.js';
import type { CuringOfPour } from '../../src/engine/index.js';
import { momentText } from '../shared/format.js';
import type { LiftingStrings } from './strings.js';

/** When each pour is strong enough, how long that takes, and whether the plan allows it as long. */
export function curingTable(
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
        const takes = pour.readyAt === null ? null : minutesBetween(pour.pouredAt, pour.readyAt);
        const guessed = totalMinutes(pour.assumed);
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
