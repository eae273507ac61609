import { html, nothing, type TemplateResult } from 'lit';
import { durationText } from '../../../src/calendar/index.js';
import type { HandbackResult } from '../../../src/engine/index.js';
import { titleOf, type LiveOption } from '../result-parts.js';
import type { HandbackStrings } from '../strings.js';
import { aimText, errorText } from '../times.js';
import { numberText } from '../../shared/format.js';
import { percentText } from '../../shared/chance.js';

/** Every way on from here with its chance, stopping now among them; and what is not offered, with why. */
export function optionList(result: HandbackResult, strings: HandbackStrings): TemplateResult {
  const { live, confidence, simulation } = result;
  const name = (id: string): string => titleOf(result, id);
  const words = (one: LiveOption): string => {
    const without =
      one.leaveOut.length > 0 ? strings.leaveOut(one.leaveOut.map(name).join(', ')) : '';
    if (one.activity === undefined || one.more === undefined)
      return without || strings.allAsPlanned;
    if (one.leaveOut.includes(one.activity)) return without;
    const count =
      one.more === 0
        ? strings.stopAtUnits(name(one.activity), one.units ?? 0)
        : strings.moreOf(name(one.activity), one.more);
    return without === '' ? count : `${count}. ${without}`;
  };
  return html`<div class="options">
    <table>
      <thead>
        <tr>
          <th scope="col">${strings.wayOn}</th>
          <th scope="col" class="figure">${strings.chanceHead}</th>
          <th scope="col" class="figure">${strings.margin}</th>
        </tr>
      </thead>
      <tbody>
        ${live?.options.map(
          (one) =>
            html`<tr class=${one.reaches ? 'reaches' : 'misses'}>
              <th scope="row">
                ${words(one)}
                ${one.condition === '' ? nothing : html`<span class="quiet">${one.condition}</span>`}
              </th>
              <td class="figure">
                <strong>${percentText(one.onTime.probability)}</strong>
                <span class="quiet">&plusmn;${errorText(one.onTime)}</span>
              </td>
              <td class="figure">${durationText(one.marginMinutes)}</td>
            </tr>`,
        )}
      </tbody>
    </table>
    <p class="quiet">
      ${strings.wanted(aimText(confidence))} ${strings.runsOf(numberText(simulation.runs))}
    </p>
    ${
      live && live.notOffered.length > 0
        ? html`<ul class="quiet">
            ${live.notOffered.map((one) => html`<li>${strings.notOffered(one.why)}</li>`)}
          </ul>`
        : nothing
    }
  </div>`;
}
