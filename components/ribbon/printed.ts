import { html, nothing, type TemplateResult } from 'lit';
import type { AccessWindow } from '../../src/model/index.js';
import type { Ledger } from '../../src/rules/types.js';
import { PRINTED_WINDOWS } from './row-heights.js';
import { axis, windowPicture } from './picture.js';
import type { Scale } from './scale.js';
import type { RibbonStrings } from './strings.js';
import type { WindowWork } from './work.js';
import { drawnLines, grossText, statusText } from './window-row.js';
import { usableText } from './window-table.js';

/** The picture as a table, so that the hours repeat at the top of every printed page. */
export function printedRibbon(
  windows: readonly AccessWindow[],
  ledgers: ReadonlyMap<string, Ledger>,
  scale: Scale,
  words: RibbonStrings,
  work: ReadonlyMap<string, WindowWork>,
): TemplateResult {
  const left = windows.length - PRINTED_WINDOWS;
  return html`${
      left > 0 ? html`<p class="left-out">${words.printedSome(PRINTED_WINDOWS, left)}</p>` : nothing
    }
    <table class="sheet">
      <thead>
        <tr>
          <th scope="col">${words.window}</th>
          <th scope="col">${axis(scale)}</th>
          <th scope="col" class="figure">${words.usable}</th>
        </tr>
      </thead>
      <tbody>
        ${windows.slice(0, PRINTED_WINDOWS).map((window) => {
          const ledger = ledgers.get(window.id);
          return html`<tr>
            <th scope="row">
              ${window.id} ${window.title}<span class="status">${statusText(window, words)}</span>
            </th>
            <td>
              ${windowPicture(window, drawnLines(window, ledger), scale, words, { work: work.get(window.id) })}
            </td>
            <td class="figure">
              <strong>${usableText(ledger, words)}</strong><br />${words.of(grossText(window))}${
                work.get(window.id)?.outcome ? html`<br />${work.get(window.id)!.outcome}` : nothing
              }
            </td>
          </tr>`;
        })}
      </tbody>
    </table>`;
}
