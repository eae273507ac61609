import { html, nothing, type TemplateResult } from 'lit';
import { durationText } from '../../src/calendar/index.js';
import type { PriceResult } from '../../src/engine/index.js';
import { clockText } from '../shared/format.js';
import { askFigure, type AskFigure } from './ask-figure.js';
import { differenceText, moneyText, sumText } from './money-text.js';
import type { OverrunStrings } from './strings.js';
import { saidText } from '../shared/said.js';

/** Overruns as columns, heads of cost as rows; under each amount its rise from the column before. */
export function sideBySide(
  overruns: readonly PriceResult[],
  zone: string,
  ask: AskFigure,
  words: OverrunStrings,
): TemplateResult | typeof nothing {
  const [first] = overruns;
  if (!first) return nothing;
  const rows = first.rows.map((row, i) => ({
    row,
    amounts: overruns.map((overrun) => overrun.rows[i]!.amount),
  }));
  const costly = rows.filter(({ amounts }) => amounts.some((amount) => Number(amount) !== 0));
  const free = rows.filter(({ amounts }) => amounts.every((amount) => Number(amount) === 0));
  return html`<div class="scroll" tabindex="0" role="region" aria-label=${words.sideBySide}>
      <table class="compare">
        <thead>
          <tr>
            <th scope="col">${words.amount(first.currency)}</th>
            ${overruns.map(
              (overrun) =>
                html`<th scope="col" class="figure">
                  ${durationText(overrun.overrunMinutes)}
                  <span class="quiet">${clockText(overrun.handbackAt, zone)}</span>
                </th>`,
            )}
          </tr>
        </thead>
        <tbody>
          ${costly.map(
            ({ row, amounts }) =>
              html`<tr class=${row.counted ? 'counts' : 'beside'}>
                <th scope="row">
                  ${saidText(row.title)}
                  ${row.counted ? nothing : html`<span class="quiet">${words.notCounted}</span>`}
                </th>
                ${overruns.map((overrun, i) => {
                  const amount = amounts[i]!;
                  return cell(amount, amounts[i - 1], () =>
                    askFigure(
                      moneyText(amount),
                      `${saidText(row.title)}, ${durationText(overrun.overrunMinutes)}, ${sumText(amount, overrun.currency)}`,
                      { of: 'cost-row', code: row.code, minutes: overrun.overrunMinutes },
                      ask,
                      words,
                    ),
                  );
                })}
              </tr>`,
          )}
        </tbody>
        <tfoot>
          <tr class="sum">
            <th scope="row">${words.sum}</th>
            ${overruns.map((overrun, i) =>
              cell(overrun.total, overruns[i - 1]?.total, () =>
                askFigure(
                  moneyText(overrun.total),
                  `${words.sum}, ${durationText(overrun.overrunMinutes)}, ${sumText(overrun.total, overrun.currency)}`,
                  { of: 'cost-total', minutes: overrun.overrunMinutes },
                  ask,
                  words,
                ),
              ),
            )}
          </tr>
        </tfoot>
      </table>
    </div>
    ${
      free.length === 0
        ? nothing
        : html`<details class="nothing">
            <summary>${words.costNothing(free.length)}</summary>
            <p class="quiet">${free.map(({ row }) => saidText(row.title)).join('; ')}.</p>
          </details>`
    }`;
}

/** An amount and its rise from the one before. */
function cell(
  amount: string,
  before: string | undefined,
  figure: () => TemplateResult,
): TemplateResult {
  const differs = before !== undefined && before !== amount;
  return html`<td class="figure ${differs ? 'differs' : ''}">
    ${figure()}
    ${differs ? html`<span class="gain">${differenceText(before, amount)}</span>` : nothing}
  </td>`;
}
