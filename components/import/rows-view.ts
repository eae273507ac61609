import { html, nothing, type TemplateResult } from 'lit';
import type { ImportPreview } from '../../src/engine/types.js';
import { problemText } from '../shared/problem-words.js';
import type { ImportStrings } from './strings.js';

/** The first rows as they will stand, each fault in the cell it is about. */
export function rowsView(
  { columns, rows }: ImportPreview,
  file: string,
  words: ImportStrings,
): TemplateResult | typeof nothing {
  if (rows.length === 0) return nothing;
  // What is said of no column, or of one that is not there, stands in the first cell.
  const place = (heading: string | undefined): number =>
    Math.max(
      0,
      columns.findIndex((column) => column.heading === heading),
    );
  return html`<h4>${words.rows}</h4>
    <div class="scroll" tabindex="0" role="region" aria-label="${words.rows}, ${file}">
      <table class="rows">
        <thead>
          <tr>
            <th scope="col" class="figure">${words.lineHead}</th>
            ${columns.map((column) => html`<th scope="col">${column.heading || words.noHeading}</th>`)}
          </tr>
        </thead>
        <tbody>
          ${rows.map(
            ({ line, cells, faults }) =>
              html`<tr>
                <th scope="row" class="figure">${line}</th>
                ${columns.map((column, at) => {
                  const own = faults.filter((fault) => place(fault.column) === at);
                  const bad = own.some((fault) => fault.severity === 'error');
                  return html`<td class=${bad ? 'bad' : ''}>
                    ${cells[at] ?? ''}
                    ${own.map(
                      (fault) =>
                        html`<span class="${fault.severity === 'error' ? 'wrong' : 'note'} told"
                          >${fault.severity === 'error' ? '✕' : '!'} ${problemText(fault)}</span
                        >`,
                    )}
                  </td>`;
                })}
              </tr>`,
          )}
        </tbody>
      </table>
    </div>`;
}
