import { html, nothing, type TemplateResult } from 'lit';
import type { KeyDateLine, PriceAnswer } from '../../src/engine/index.js';
import { dueText, momentText } from '../shared/format.js';
import { moneyText } from './money-text.js';
import type { OverrunStrings } from './strings.js';
import { saidText } from '../shared/said.js';

function stateText({ daysLate }: KeyDateLine, words: OverrunStrings): string {
  if (daysLate === null) return words.keyDateUnknown;
  return daysLate === 0 ? words.keyDateMet : words.keyDateLate(daysLate);
}

/** Cost of the plan for each of its key dates; nothing when the price book does not price them. */
export function keyDateList(
  { keyDates, at }: PriceAnswer,
  zone: string,
  words: OverrunStrings,
): TemplateResult | typeof nothing {
  if (!keyDates || keyDates.length === 0) return nothing;
  const met = keyDates.filter((date) => date.daysLate === 0);
  const others = keyDates.filter((date) => date.daysLate !== 0);
  return html`<section class="key-dates">
    <h3>${words.keyDates}</h3>
    <p class="quiet">${words.keyDatesNote}</p>
    ${others.length === 0 ? nothing : dateTable(others, at.currency, zone, words)}
    ${
      met.length === 0
        ? nothing
        : html`<details class="nothing">
            <summary>${words.keyDatesMet(met.length)}</summary>
            ${dateTable(met, at.currency, zone, words)}
          </details>`
    }
  </section>`;
}

function dateTable(
  lines: readonly KeyDateLine[],
  currency: string,
  zone: string,
  words: OverrunStrings,
): TemplateResult {
  return html`<table class="rows">
    <thead>
      <tr>
        <th scope="col">${words.keyDate}</th>
        <th scope="col" class="figure">${words.amount(currency)}</th>
      </tr>
    </thead>
    <tbody>
      ${lines.map(
        (line) =>
          html`<tr class=${line.daysLate === 0 ? 'beside' : nothing}>
            <th scope="row">
              <span class="title">${saidText(line.title)}: ${stateText(line, words)}</span>
              <span class="head"
                >${words.keyDateDue(dueText(line.due, zone))}${
                  line.forecast === null
                    ? nothing
                    : `, ${words.keyDateEnds(momentText(line.forecast, zone))}`
                }</span
              >
              ${line.daysLate === 0 ? nothing : html`<span class="formula">${saidText(line.formula)}</span>`}
              <span class="source">${words.source}: ${line.source}</span>
            </th>
            <td class="figure">
              ${
                line.amount === null
                  ? html`<span class="state">${words.keyDateUnpriced}</span>`
                  : html`<span class="amount">${moneyText(line.amount)}</span>`
              }
            </td>
          </tr>`,
      )}
    </tbody>
  </table>`;
}
