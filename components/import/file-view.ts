import { html, nothing, type TemplateResult } from 'lit';
import type { ImportReport } from '../../src/engine/types.js';
import { numberText } from '../shared/format.js';
import { asksView } from './asks-view.js';
import { choicesView, type Choose } from './choices-view.js';
import { columnsView } from './columns-view.js';
import { effectsView } from './effects-view.js';
import { faultsView } from './faults-view.js';
import { rowsView } from './rows-view.js';
import type { ImportStrings } from './strings.js';

/** One file: what it was taken for, what else could be chosen, its rows and its faults. */
export function fileView(
  report: ImportReport,
  at: number,
  words: ImportStrings,
  choose: Choose,
  askAnew: (() => void) | null,
): TemplateResult {
  const { preview } = report;
  if (preview) {
    // Those of the rows shown stand in their cells.
    const shown = new Set(preview.rows.map((row) => row.row));
    const unseen = report.faults.filter(
      (fault) => fault.row === undefined || !shown.has(fault.row),
    );
    return html`<section class="file" aria-label=${report.file}>
      <h3>${report.file}</h3>
      <p class="quiet">${words.kinds[report.kind]}, ${words.count.row(report.rows)}</p>
      ${
        askAnew
          ? html`<p class="as-before">
              ${words.remembered}
              <button type="button" class="plain" @click=${askAnew}>${words.askAnew}</button>
            </p>`
          : nothing
      }
      ${asksView(preview, report.file, words, choose)} ${choicesView(preview, words, choose)}
      ${effectsView(preview, `take-${at}`, words, choose)}
      ${columnsView(preview, report.file, words, choose)} ${rowsView(preview, report.file, words)}
      ${unseen.length > 0 ? faultsView(unseen, report.file, words) : nothing}
    </section>`;
  }
  return html`<section class="file" aria-label=${report.file}>
    <h3>${report.file}</h3>
    <dl class="facts">
      <div>
        <dt>${words.readAsHead}</dt>
        <dd>${words.kinds[report.kind]}</dd>
      </div>
      <div>
        <dt>${words.rowsHead}</dt>
        <dd>${numberText(report.rows)}</dd>
      </div>
      ${
        report.encoding
          ? html`<div>
              <dt>${words.encodingHead}</dt>
              <dd>${report.encoding}</dd>
            </div>`
          : nothing
      }
      ${
        report.delimiter
          ? html`<div>
              <dt>${words.partedBy}</dt>
              <dd>${words.delimiters[report.delimiter] ?? report.delimiter}</dd>
            </div>`
          : nothing
      }
    </dl>
    ${
      report.matched.length + report.unmatched.length > 0
        ? html`<ul class="heads" aria-label=${words.headingsHead}>
            ${report.matched.map(
              (head) =>
                html`<li>
                  ${
                    head.column.toLowerCase() === head.field.toLowerCase()
                      ? head.column
                      : html`${head.column}
                          <span class="quiet">${words.readAsHead}</span> ${head.field}`
                  }
                </li>`,
            )}
            ${report.unmatched.map((head) => html`<li class="unread">${head}, ${words.kept}</li>`)}
          </ul>`
        : nothing
    }
    ${report.faults.length > 0 ? faultsView(report.faults, report.file, words) : nothing}
  </section>`;
}
