import { html, type TemplateResult } from 'lit';
import { durationText, MINUTE } from '../../src/calendar/index.js';
import type { AccessWindow } from '../../src/model/index.js';
import type { Ledger } from '../../src/rules/types.js';
import { stretchText } from '../shared/format.js';
import { ledgerKinds } from '../shared/kinds.js';
import type { RibbonStrings } from './strings.js';

/** The figures of the picture as a table. */
export function windowTable(
  windows: readonly AccessWindow[],
  ledgers: ReadonlyMap<string, Ledger>,
  words: RibbonStrings,
): TemplateResult {
  const shown = ledgerKinds.filter((kind) => kind !== 'usable');
  return html`<div class="scroll" tabindex="0" role="region" aria-label=${words.table}>
    <table>
      <thead>
        <tr>
          <th scope="col">${words.window}</th>
          <th scope="col">${words.fromTo}</th>
          <th scope="col">${words.statusHead}</th>
          <th scope="col" class="figure">${words.booked}</th>
          ${shown.map((kind) => html`<th scope="col" class="figure">${words.kind[kind]}</th>`)}
          <th scope="col" class="figure">${words.usable}</th>
        </tr>
      </thead>
      <tbody>
        ${windows.map((one) => {
          const ledger = ledgers.get(one.id);
          return html`<tr>
            <th scope="row">${one.id} ${one.title}</th>
            <td>${stretchText(one.start, one.end, one.zone)}</td>
            <td>${words.status[one.status]}</td>
            <td class="figure">${durationText((one.end - one.start) / MINUTE)}</td>
            ${shown.map((kind) => {
              const minutes = (ledger?.rows ?? [])
                .filter((row) => row.kind === kind)
                .reduce((sum, row) => sum + row.minutes, 0);
              return html`<td class="figure">
                ${minutes === 0 ? words.none : durationText(minutes)}
              </td>`;
            })}
            <td class="figure">
              <strong>${usableText(ledgers.get(one.id), words)}</strong>
            </td>
          </tr>`;
        })}
      </tbody>
    </table>
  </div>`;
}

/** Usable time as it is shown: none where the window takes no work. */
export function usableText(ledger: Ledger | undefined, words: RibbonStrings): string {
  if (!ledger) return words.notRead;
  return ledger.barred.length > 0 ? words.none : durationText(ledger.usableMinutes);
}
