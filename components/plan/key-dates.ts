import { html, nothing, svg, type TemplateResult } from 'lit';
import type { KeyDateForecast } from '../../src/planner/search/types.js';
import { dayText, floatText, dueText, momentText } from '../shared/format.js';
import type { PlanStrings } from './strings.js';

const FLOAT = 120;

/** Every key date with its forecast and the float between, as figures and as a bar. */
export function keyDateTable(
  dates: readonly KeyDateForecast[],
  zone: string,
  words: PlanStrings,
  ask: (name: string) => void,
): TemplateResult {
  if (dates.length === 0) return html``;
  const moments = dates.flatMap((date) => [date.due, date.forecast ?? date.due]);
  const span = { from: Math.min(...moments), to: Math.max(...moments) };
  return html`<h2>${words.keyDates}</h2>
    <div class="scroll" tabindex="0" role="region" aria-label=${words.keyDates}>
      <table>
        <thead>
          <tr>
            <th scope="col">${words.package}</th>
            <th scope="col">${words.due}</th>
            <th scope="col">${words.forecast}</th>
            <th scope="col" class="figure">${words.float}</th>
            <th scope="col" class="figure">${words.inWindows}</th>
            <th scope="col">${words.met}</th>
            <th scope="col" class="float clock-run" aria-hidden="true">
              <span>${dayText(span.from, zone)}</span><span>${dayText(span.to, zone)}</span>
            </th>
          </tr>
        </thead>
        <tbody>
          ${dates.map(
            (date) =>
              html`<tr>
                <th scope="row">
                  ${date.package}
                  ${
                    date.sharesFloatWith.length > 0
                      ? html`<details class="shares">
                          <summary>${words.shares(String(date.sharesFloatWith.length))}</summary>
                          ${date.sharesFloatWith.join(', ')}
                        </details>`
                      : nothing
                  }
                </th>
                <td>${dueText(date.due, zone)}</td>
                <td>
                  ${date.forecast === null ? words.notAllPlaced : momentText(date.forecast, zone)}
                </td>
                <td class="figure">
                  <button class="plain" type="button" @click=${() => ask(date.package)}>
                    ${date.floatMinutes === null ? words.noneKnown : floatText(date.floatMinutes)}
                  </button>
                </td>
                <td class="figure">${date.floatWindows ?? words.noneKnown}</td>
                <td class=${date.met ? 'met' : 'missed'}>
                  ${date.met ? `● ${words.dateMet}` : `▽ ${words.dateMissed}`}
                </td>
                <td class="float" aria-hidden="true">${floatBar(date, span)}</td>
              </tr>`,
          )}
        </tbody>
      </table>
    </div>`;
}

/** From the forecast (disc) to the due date (post): the bar between is the float, hollow when it is negative. */
function floatBar(date: KeyDateForecast, span: { from: number; to: number }): TemplateResult {
  const wide = FLOAT - 10;
  const x = (at: number): number =>
    5 + ((at - span.from) / Math.max(1, span.to - span.from)) * wide;
  const due = x(date.due);
  const forecast = date.forecast === null ? null : x(date.forecast);
  return html`<svg width=${FLOAT} height="14">
    <line class="axis" x1="0" x2=${FLOAT} y1="7" y2="7"></line>
    ${
      forecast === null
        ? nothing
        : svg`<rect class=${date.met ? 'held' : 'lost'} x=${Math.min(due, forecast)} width=${Math.abs(due - forecast)} y="4.5" height="5"></rect>
          <circle class=${date.met ? 'held' : 'lost'} cx=${forecast} cy="7" r="4"></circle>`
    }
    <line class="due" x1=${due} x2=${due} y1="0" y2="14"></line>
  </svg>`;
}
