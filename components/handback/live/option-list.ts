import { html, nothing, type TemplateResult } from 'lit';
import { durationText } from '../../../src/calendar/index.js';
import type { HandbackResult } from '../../../src/engine/index.js';
import { titleOf, type LiveOption } from '../result-parts.js';
import type { HandbackStrings } from '../strings.js';
import { aimText, errorText } from '../times.js';
import { numberText } from '../../shared/format.js';
import { percentText } from '../../shared/chance.js';
import { said, saidWhy } from '../../shared/said.js';

/** What goes or stops beside the work that is counted; empty: nothing. */
export function besides(
  { leaveOut, alsoStop }: Pick<LiveOption, 'leaveOut' | 'alsoStop'>,
  name: (id: string) => string,
  strings: HandbackStrings,
): string {
  const stops = alsoStop.map((stop) => `${strings.stopAtUnits(name(stop.activity), stop.units)}.`);
  const out = leaveOut.length > 0 ? [strings.leaveOut(leaveOut.map(name).join(', '))] : [];
  return [...stops, ...out].join(' ');
}

/** Every way on from here with its chance, stopping now among them; and what is not offered, with why. */
export function optionList(result: HandbackResult, strings: HandbackStrings): TemplateResult {
  const { live, confidence, simulation } = result;
  const name = (id: string): string => titleOf(result, id);
  const words = (option: LiveOption): string => {
    const without = besides(option, name, strings);
    if (option.activity === undefined || option.more === undefined)
      return without || strings.allAsPlanned;
    if (option.leaveOut.includes(option.activity)) return without;
    const count =
      option.more === 0
        ? strings.stopAtUnits(name(option.activity), option.units ?? 0)
        : strings.moreOf(name(option.activity), option.more);
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
          (option) =>
            html`<tr class=${option.reaches ? 'reaches' : 'misses'}>
              <th scope="row">
                ${words(option)}
                ${option.condition === '' ? nothing : html`<span class="quiet">${said({ text: option.condition, ...(option.conditioned && { sentence: option.conditioned }) })}</span>`}
              </th>
              <td class="figure">
                <strong>${percentText(option.onTime.probability)}</strong>
                <span class="quiet">&plusmn;${errorText(option.onTime)}</span>
              </td>
              <td class="figure">${durationText(option.marginMinutes)}</td>
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
            ${live.notOffered.map((offered) => html`<li>${strings.notOffered} ${saidWhy(offered)}</li>`)}
          </ul>`
        : nothing
    }
  </div>`;
}
