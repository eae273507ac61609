import { html, nothing, type TemplateResult } from 'lit';
import type { BookedWindow } from '../../src/engine/index.js';
import type { AccessWindow } from '../../src/model/index.js';
import { stretchText } from '../shared/format.js';
import type { BookingStrings } from './strings.js';
import { titleText } from '../shared/name.js';

/** Each window with its days, its four-week period and its class, and a field for the share of trains it hits. */
export function windowTable(
  booked: readonly BookedWindow[],
  windows: readonly AccessWindow[],
  words: BookingStrings,
  share: (window: string, percent: number) => void,
): TemplateResult {
  return html`<table class="windows">
    <thead>
      <tr>
        <th scope="col">${words.window}</th>
        <th scope="col">${words.periodHead}</th>
        <th scope="col">${words.share}, ${words.shareUnit}</th>
        <th scope="col">${words.restrictionHead}</th>
      </tr>
    </thead>
    <tbody>
      ${booked.map((item) => {
        const window = windows.find((each) => each.id === item.window);
        return html`<tr part="window" class="window">
          <th scope="row">
            ${item.window} ${titleText(window?.title ?? '')}
            <span class="note"
              >${
                window
                  ? `${stretchText(window.start, window.end, window.zone)}, ${words.status[window.status]}`
                  : words.notInPlan
              }</span
            >
          </th>
          <td>
            ${item.periods.join(', ')}
            <span class="note"
              >${words.days(item.days)}${item.periods.length > 1 ? `; ${words.twoPeriods}` : nothing}</span
            >
          </td>
          <td>
            <input
              type="number"
              min="0"
              max="100"
              step="any"
              aria-label=${`${words.share}, ${words.shareUnit}: ${item.window}`}
              .value=${item.sharePercent === null ? '' : String(item.sharePercent)}
              @change=${(event: Event) => {
                const input = event.currentTarget as HTMLInputElement;
                if (input.value !== '' && input.reportValidity())
                  share(item.window, input.valueAsNumber);
              }}
            />
          </td>
          <td>${item.restriction ?? html`<span class="quiet">${words.notSaid}</span>`}</td>
        </tr>`;
      })}
    </tbody>
  </table>`;
}
