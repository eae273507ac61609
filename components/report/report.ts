import { html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { reportIn } from '../../src/engine/report/report-in.js';
import type { Report } from '../../src/engine/report/report.js';
import { base } from '../shared/base.js';
import { moneyText } from '../overrun/money-text.js';
import { spokenNow } from '../shared/language.js';
import { saidText } from '../shared/said.js';
import { paper } from '../shared/paper.js';
import { Words } from '../shared/words.js';
import { ReportCloseEvent, ReportSaveEvent } from './report-events.js';
import { styles } from './report.styles.js';
import { defaultStrings, type ReportStrings } from './strings.js';

/**
 * A report on the screen as it is on A4: facts, tables with their sums, what is assumed, what is left out, the cautions.
 *
 * @summary A report to be read, printed or saved.
 * @tag possession-report
 * @event {ReportCloseEvent} possession-report-close - A reader is done with it.
 * @event {ReportSaveEvent} possession-report-save - A reader wants it as a file.
 * @slot before - What is chosen of the report, at the head of its bar.
 * @slot after - What else can be saved, at the end of its bar.
 * @csspart sheet - The report itself.
 */
export class PossessionReport extends LitElement {
  static override readonly styles = [...base, styles, paper];
  static override readonly properties: PropertyDeclarations = {
    report: { attribute: false },
    closable: { attribute: false },
    strings: { attribute: false },
  };

  declare report: Report | null;
  /** Whether it stands in place of something that a reader goes back to. */
  declare closable: boolean;
  /** Words in place of the default ones. */
  declare strings: Partial<ReportStrings>;

  readonly #words = new Words<ReportStrings>(this, defaultStrings, {
    de: () => import('./strings.de.js'),
  });

  constructor() {
    super();
    this.report = null;
    this.closable = true;
    this.strings = {};
  }

  override render(): TemplateResult {
    const words = this.#words.now;
    if (!this.report) return html``;
    const report = reportIn(this.report, saidText);
    const save = (format: 'csv' | 'xlsx') => () =>
      this.dispatchEvent(new ReportSaveEvent(this.report!, format));
    return html`<div class="bar on-screen" role="group" aria-label=${words.actions}>
        <slot name="before"></slot>
        ${
          this.closable
            ? html`<button type="button" @click=${() => this.dispatchEvent(new ReportCloseEvent())}>
                ${words.back}
              </button>`
            : nothing
        }
        <button type="button" class="strong" @click=${() => globalThis.print()}>
          ${words.print}
        </button>
        <button type="button" @click=${save('csv')}>${words.csv}</button>
        <button type="button" @click=${save('xlsx')}>${words.workbook}</button>
        <slot name="after"></slot>
      </div>
      <article part="sheet" lang=${spokenNow().words}>
        <h2>${report.title}</h2>
        <dl>
          ${report.facts.map(
            (fact) =>
              html`<div>
                <dt>${fact.label}</dt>
                <dd>${fact.value}</dd>
              </div>`,
          )}
        </dl>
        ${report.tables.map(
          (table) =>
            html`<section>
              <h3>${table.title}</h3>
              <div class="scroll" tabindex="0" role="region" aria-label=${table.title}>
                <table>
                  <thead>
                    <tr>
                      ${table.columns.map((column, i) =>
                        column === ''
                          ? html`<td></td>`
                          : html`<th scope="col" class=${table.figures.includes(i) ? 'figure' : ''}>
                              ${column}
                            </th>`,
                      )}
                    </tr>
                  </thead>
                  <tbody>
                    ${table.rows.map(
                      (row) =>
                        html`<tr>
                          ${row.map((cell, i) =>
                            i === 0
                              ? html`<th scope="row">${cell}</th>`
                              : html`<td class=${classOf(table, i)}>
                                  ${table.figures.includes(i) ? figureText(cell) : cell}
                                </td>`,
                          )}
                        </tr>`,
                    )}
                  </tbody>
                </table>
              </div>
            </section>`,
        )}
        ${report.lists.map(
          (list) =>
            html`<section class="keep-whole">
              <h3>${list.title}</h3>
              <ul>
                ${list.items.map((item) => html`<li>${item}</li>`)}
              </ul>
            </section>`,
        )}
        <section class="cautions">
          <h3>${words.caution}</h3>
          <ul>
            ${report.cautions.map((caution) => html`<li>${caution}</li>`)}
          </ul>
        </section>
      </article>`;
  }
}

function classOf({ figures, unbroken }: Report<string>['tables'][number], column: number): string {
  if (figures.includes(column)) return 'figure';
  return unbroken?.includes(column) ? 'unbroken' : '';
}

/** Decimals with their thousands apart, each of several; any other figure as it stands. */
const figureText = (cell: string): string =>
  cell
    .split('; ')
    .map((part) => (/^-?\d{1,15}\.\d{1,4}$/.test(part) ? moneyText(part) : part))
    .join('; ');

declare global {
  interface HTMLElementTagNameMap {
    'possession-report': PossessionReport;
  }
}
