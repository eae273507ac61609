import { html, nothing, type TemplateResult } from 'lit';
import { repeat } from 'lit/directives/repeat.js';
import { percentOfShare, type Account, type AccountRow } from '../../src/engine/index.js';
import { saidText } from '../shared/said.js';
import { moneyText } from '../overrun/money-text.js';
import { entryField, type Entry } from './entry.js';
import { readShare, readSum, type Entered } from './read-entry.js';
import { withClaim, withInvoice } from './request-edits.js';

const anyText = (text: string): Entered<string> => ({ value: text.trim() });

/** Every row of the account: how it is calculated, who claims it and the evidence. */
export function rowList(account: Account, on: Entry): TemplateResult {
  const { words } = on;
  if (account.rows.length === 0) return html`<p class="quiet">${words.noRows}</p>`;
  const rows = placed(account.rows);
  const names = [...new Set(account.rows.map((row) => row.claimedBy))].filter(
    (text) => text !== '',
  );
  return html`<p class="quiet on-screen">${words.rowsNote}</p>
    <datalist id="claimants">
      ${names.map((text) => html`<option value=${text}></option>`)}
    </datalist>
    <table class="cards account-rows">
      <thead>
        <tr>
          <th scope="col">${words.what}</th>
          <th scope="col">${words.claimedBy}</th>
          <th scope="col">${words.evidence}</th>
          <th scope="col" class="figure">${words.amount(account.currency)}</th>
        </tr>
      </thead>
      <tbody>
        ${repeat(
          rows,
          (row) => row.key,
          (row) => rowCard(row, account.currency, on),
        )}
      </tbody>
    </table>`;
}

/** A row, its index among rows of the same code, and a stable key for its fields. */
interface PlacedRow {
  readonly row: AccountRow;
  readonly nth: number;
  readonly key: string;
}

function placed(rows: readonly AccountRow[]): readonly PlacedRow[] {
  const seen = new Map<string, number>();
  return rows.map((row) => {
    const nth = seen.get(row.code) ?? 0;
    seen.set(row.code, nth + 1);
    const id = row.code.replace(/[^\w-]/g, (letter) => `_${letter.charCodeAt(0)}_`);
    return { row, nth, key: `${nth}-${id}` };
  });
}

function rowCard(item: PlacedRow, currency: string, on: Entry): TemplateResult {
  const { row } = item;
  const { words } = on;
  return html`<tr part="row" class=${row.counted ? 'counts' : 'beside'}>
    <th scope="row">
      <span class="title">${saidText(row.what)}</span>
      <span class="small">${words.head[row.head]}, ${words.basis[row.basis]}</span>
      <span class="formula">${saidText(row.formula)}</span>
      <span class="small">${words.source}: ${saidText(row.source)}</span>
      ${rowDetails(item, currency, on)}
    </th>
    ${claimCells(item, on)}
    <td class="figure">
      <span class="amount">${moneyText(row.amount)}</span>
      ${nothingToClaim(row) ? nothing : shareField(item, on)}
      ${row.counted ? nothing : html`<span class="small">(${words.notCounted})</span>`}
    </td>
  </tr>`;
}

/** No charge and no claim data, so there is nothing to claim. */
const nothingToClaim = (row: AccountRow): boolean =>
  Number(row.amount) === 0 && row.claimedBy === '' && !row.evidenced && row.share === '1';

/** Our share of the cost, beside the amount, which already includes it. */
function shareField({ row, nth, key }: PlacedRow, on: Entry): TemplateResult {
  const { words, request } = on;
  const percent = percentOfShare(row.share);
  return html`<span class="share on-screen"
      ><span class="small" aria-hidden="true">${words.shareShort}</span>${entryField(
        {
          key: `share-${key}`,
          label: `${words.share}: ${saidText(row.what)}`,
          value: percent,
          read: (text) => readShare(text, words),
          take: (share) => on.ask(withClaim(request, row, nth, { share })),
        },
        on,
      )}</span
    >
    ${row.share === '1' ? nothing : html`<span class="on-paper">${words.shareOf(percent)}</span>`}`;
}

/** Who claims a row, and the evidence. */
function claimCells({ row, nth, key }: PlacedRow, on: Entry): TemplateResult {
  const { words, request } = on;
  if (nothingToClaim(row))
    return html`<td colspan="2" class="none quiet">${words.nothingCharged}</td>`;
  return html`<td>
      <span class="narrow" aria-hidden="true">${words.claimedBy}</span>
      <span class="on-screen"
        >${entryField(
          {
            key: `by-${key}`,
            label: `${words.claimedBy}: ${saidText(row.what)}`,
            value: row.claimedBy,
            kind: 'words',
            list: 'claimants',
            read: anyText,
            take: (claimedBy) => on.ask(withClaim(request, row, nth, { claimedBy })),
          },
          on,
        )}</span
      >
      <span class="on-paper">${row.claimedBy === '' ? words.unclaimed : row.claimedBy}</span>
    </td>
    <td>
      <span class="narrow" aria-hidden="true">${words.evidence}</span>
      <span class="on-screen"
        >${entryField(
          {
            key: `evidence-${key}`,
            label: `${words.evidence}: ${saidText(row.what)}`,
            value: row.evidence,
            kind: 'words',
            read: anyText,
            take: (evidence) => on.ask(withClaim(request, row, nth, { evidence })),
          },
          on,
        )}</span
      >
      <span class="on-paper">${row.evidence}</span>
      ${
        row.evidenced || Number(row.amount) !== 0
          ? html`<span class="tag ${row.evidenced ? 'good' : 'open'}"
              >${row.evidenced ? words.evidenced : words.notEvidenced}</span
            >`
          : nothing
      }
    </td>`;
}

/** Inputs of the amount; a row from the book can be replaced here by an invoice. */
function rowDetails(
  { row, key }: PlacedRow,
  currency: string,
  on: Entry,
): TemplateResult | typeof nothing {
  const { request, words } = on;
  const invoice = request.chargeActuals?.find((actual) => actual.code === row.code);
  // Trains and time sheets are entered above the rows.
  const mayInvoice = !row.code.startsWith('train-') && (row.basis === 'worked out' || !!invoice);
  if (row.inputs.length === 0 && !mayInvoice) return nothing;
  return html`<details ?open=${on.refused.has(`invoice-${key}`)}>
    <summary>
      ${mayInvoice ? words.inputsAndInvoice : words.inputs}<span class="unseen"
        >: ${saidText(row.what)}</span
      >
    </summary>
    <dl class="inputs">
      ${row.inputs.map(
        (input) =>
          html`<div>
            <dt>${saidText(input.name)}</dt>
            <dd>${saidText(input.value)} ${saidText(input.unit)}</dd>
          </div>`,
      )}
    </dl>
    ${
      mayInvoice
        ? entryField<string | null>(
            {
              key: `invoice-${key}`,
              label: words.invoice(currency),
              shown: true,
              value: invoice?.amount ?? '',
              read: (text) => (text.trim() === '' ? { value: null } : readSum(text, words)),
              take: (amount) =>
                on.ask(withInvoice(request, { ...row, what: saidText(row.what) }, amount)),
            },
            on,
          )
        : nothing
    }
  </details>`;
}
