import { html, nothing, type TemplateResult } from 'lit';
import type { Account } from '../../src/engine/index.js';
import { moneyText, sumText } from '../overrun/money-text.js';
import type { AccountStrings } from './strings.js';

/** The total, and how much of it has evidence. */
export function sumsView(account: Account, words: AccountStrings): TemplateResult {
  const { currency } = account;
  const open = account.rows.filter((row) => row.counted && !row.evidenced).length;
  return html`<dl class="sums">
    <div class="most">
      <dt>${words.total}</dt>
      <dd part="total">${sumText(account.total, currency)}</dd>
    </div>
    <div>
      <dt>${words.totalEvidenced}</dt>
      <dd>${sumText(account.evidenced, currency)}</dd>
    </div>
    <div class=${open > 0 ? 'open' : ''}>
      <dt>${words.totalNotEvidenced}</dt>
      <dd>${sumText(account.notEvidenced, currency)}</dd>
    </div>
    ${
      account.rows.some((row) => !row.counted)
        ? html`<div>
            <dt>${words.totalNotCounted}</dt>
            <dd>${sumText(account.notCounted, currency)}</dd>
          </div>`
        : nothing
    }
  </dl>`;
}

/** The total by claimant and by head of cost, beside the forecast. */
export function breakdowns(account: Account, words: AccountStrings): TemplateResult {
  const { currency, claimants, heads } = account;
  if (heads.length === 0) return html``;
  const foreseen = heads.some((head) => head.forecast !== null);
  return html`<div class="breakdowns">
    <section>
      <h3>${words.byClaimant}</h3>
      <table>
        <thead>
          <tr>
            <th scope="col">${words.claimant}</th>
            <th scope="col" class="figure">${words.amount(currency)}</th>
          </tr>
        </thead>
        <tbody>
          ${claimants.map(
            (claimant) =>
              html`<tr>
                <th scope="row">
                  ${claimant.claimedBy === '' ? words.unclaimed : claimant.claimedBy}
                </th>
                <td class="figure">${moneyText(claimant.amount)}</td>
              </tr>`,
          )}
        </tbody>
      </table>
    </section>
    <section>
      <h3>${words.byHead}</h3>
      <table>
        <thead>
          <tr>
            <th scope="col">${words.headOfCost}</th>
            <th scope="col" class="figure">${words.amount(currency)}</th>
            ${foreseen ? html`<th scope="col" class="figure">${words.forecast(currency)}</th>` : nothing}
          </tr>
        </thead>
        <tbody>
          ${heads.map(
            (head) =>
              html`<tr>
                <th scope="row">${words.head[head.head]}</th>
                <td class="figure">${moneyText(head.amount)}</td>
                ${foreseen ? html`<td class="figure">${moneyText(head.forecast ?? '')}</td>` : nothing}
              </tr>`,
          )}
        </tbody>
      </table>
    </section>
  </div>`;
}
