import { html, nothing, type TemplateResult } from 'lit';
import { guard } from 'lit/directives/guard.js';
import { durationText, MINUTE } from '../../src/calendar/index.js';
import type { AccessWindow } from '../../src/model/index.js';
import type { Ledger } from '../../src/rules/types.js';
import { stretchText } from '../shared/format.js';
import { ledgerKinds } from '../shared/kinds.js';
import { placed } from '../shared/placed.js';
import { PRINTED_WINDOWS } from './row-heights.js';
import type { RowsInSight } from './rows-in-sight.js';
import type { RibbonStrings } from './strings.js';

const shown = ledgerKinds.filter((kind) => kind !== 'usable');

/**
 * The figures of the picture as a table.
 * @param rows Which of them are in sight; null: the table is for paper.
 */
export function windowTable(
  windows: readonly AccessWindow[],
  ledgers: ReadonlyMap<string, Ledger>,
  words: RibbonStrings,
  rows: RowsInSight | null,
): TemplateResult {
  const many = rows?.many === true;
  const places = rows ? rows.places(-1) : [...windows.slice(0, PRINTED_WINDOWS).keys()];
  const gaps = rows?.gaps ?? { before: 0, after: 0 };
  const left = windows.length - PRINTED_WINDOWS;
  return html`${
      !rows && left > 0
        ? html`<p class="left-out">${words.printedSome(PRINTED_WINDOWS, left)}</p>`
        : nothing
    }
    <div class="scroll" tabindex="0" role="region" aria-label=${words.table}>
      <table class=${many ? 'long' : ''} aria-rowcount=${many ? windows.length + 1 : nothing}>
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
        <tbody class="rows">
          ${gap(gaps.before)}
          ${places.map((place) => {
            const window = windows[place]!;
            const ledger = ledgers.get(window.id);
            const index = many ? place + 2 : undefined;
            return guard([window, ledger, words, index], () => row(window, ledger, words, index));
          })}
          ${gap(gaps.after)}
        </tbody>
      </table>
    </div>`;
}

/** Space for rows that are not drawn. */
function gap(height: number): TemplateResult | typeof nothing {
  return height > 0 ? html`<tr class="gap" aria-hidden="true" ${placed(0, height)}></tr>` : nothing;
}

function row(
  window: AccessWindow,
  ledger: Ledger | undefined,
  words: RibbonStrings,
  index: number | undefined,
): TemplateResult {
  return html`<tr aria-rowindex=${index ?? nothing}>
    <th scope="row">${window.id} ${window.title}</th>
    <td>${stretchText(window.start, window.end, window.zone)}</td>
    <td>${words.status[window.status]}</td>
    <td class="figure">${durationText((window.end - window.start) / MINUTE)}</td>
    ${shown.map((kind) => {
      const minutes = (ledger?.rows ?? [])
        .filter((step) => step.kind === kind)
        .reduce((sum, step) => sum + step.minutes, 0);
      return html`<td class="figure">${minutes === 0 ? words.none : durationText(minutes)}</td>`;
    })}
    <td class="figure"><strong>${usableText(ledger, words)}</strong></td>
  </tr>`;
}

/** Usable time as shown: none when the window takes no work. */
export function usableText(ledger: Ledger | undefined, words: RibbonStrings): string {
  if (!ledger) return words.notRead;
  return ledger.barred.length > 0 ? words.none : durationText(ledger.usableMinutes);
}
