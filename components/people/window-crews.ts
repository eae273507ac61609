import { html, nothing, type TemplateResult } from 'lit';
import { totalMinutes } from '../../src/calendar/index.js';
import type { PeopleAnswer, WindowCrews } from '../../src/engine/index.js';
import type { AccessWindow } from '../../src/model/index.js';
import { floatText, stretchText } from '../shared/format.js';
import type { PeopleStrings } from './strings.js';

/**
 * The crews that each window takes against those rostered for it.
 *
 * @param windows For their times; those without are listed by id alone.
 */
export function windowCrews(
  { windows: rows, zone }: PeopleAnswer,
  windows: readonly AccessWindow[],
  words: PeopleStrings,
): TemplateResult | typeof nothing {
  if (rows.length === 0) return nothing;
  const times = new Map(windows.map((window) => [window.id, window]));
  const row = (item: WindowCrews): TemplateResult => {
    const window = times.get(item.window);
    const missing = totalMinutes(item.unmanned);
    return html`<tr>
      <th scope="row">
        ${item.window}
        ${window ? html`<span class="source">${stretchText(window.start, window.end, window.zone ?? zone)}</span>` : nothing}
      </th>
      <td class="figure">${item.plan?.crews ?? ''}</td>
      <td class="figure">${item.plan ? floatText(item.plan.changeoverMinutes) : ''}</td>
      <td>${item.rostered.length > 0 ? item.rostered.join(', ') : words.nobody}</td>
      <td class=${missing > 0 ? 'bad-text' : ''}>
        ${missing > 0 ? floatText(missing) : words.manned}
      </td>
    </tr>`;
  };
  return html`<section>
    <h3>${words.windows}</h3>
    <div class="scroll" tabindex="0" role="region" aria-label=${words.windows}>
      <table>
        <thead>
          <tr>
            <th scope="col">${words.window}</th>
            <th scope="col" class="figure">${words.needed}</th>
            <th scope="col" class="figure">${words.changeovers}</th>
            <th scope="col">${words.rostered}</th>
            <th scope="col">${words.unmanned}</th>
          </tr>
        </thead>
        <tbody>
          ${rows.map(row)}
        </tbody>
      </table>
    </div>
  </section>`;
}
