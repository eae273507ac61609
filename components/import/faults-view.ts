import { html, nothing, type TemplateResult } from 'lit';
import type { Fault } from '../../src/model/index.js';
import { countText } from '../shared/format.js';

/** More faults than anyone reads; the rest are in the sheet. */
const SHOWN = 200;

/** What is wrong with a file, and how to mend it. */
export function faultsView(faults: readonly Fault[], file: string): TemplateResult {
  return html`<div
    class="scroll faults"
    tabindex="0"
    role="region"
    aria-label="What is wrong, ${file}"
  >
    <table>
      <thead>
        <tr>
          <th scope="col">Where</th>
          <th scope="col">What</th>
          <th scope="col">Mend</th>
        </tr>
      </thead>
      <tbody>
        ${faults.slice(0, SHOWN).map(
          (fault) =>
            html`<tr>
              <td>
                ${fault.line === undefined ? 'file' : html`line ${fault.line}`}${
                  fault.column === undefined ? nothing : html`, ${fault.column}`
                }
              </td>
              <td>
                <span class=${fault.severity === 'error' ? 'wrong' : 'note'}
                  >${fault.severity === 'error' ? '✕ Error' : '! Note'}</span
                >
                ${fault.message}
              </td>
              <td>${fault.mend}</td>
            </tr>`,
        )}
      </tbody>
    </table>
    ${
      faults.length > SHOWN
        ? html`<p class="quiet">and ${countText(faults.length - SHOWN, 'more', 'more')}</p>`
        : nothing
    }
  </div>`;
}
