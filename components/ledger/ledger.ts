import { html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { durationText } from '../../src/calendar/index.js';
import type { AccessWindow } from '../../src/model/index.js';
import type { Ledger } from '../../src/rules/types.js';
import { Fed } from '../document/fed.js';
import { base } from '../shared/base.js';
import { cautionList, cautionStyles } from '../shared/cautions.js';
import { clockText, stretchText } from '../shared/format.js';
import { kindFill, kindPatterns, kindStyles } from '../shared/kinds.js';
import { paper, PORTRAIT } from '../shared/paper.js';
import { PrintWatch } from '../shared/print-watch.js';
import { rightToLeft } from '../shared/right-to-left.js';
import { WidthWatch } from '../shared/width-watch.js';
import { Words } from '../shared/words.js';
import { LedgerAskEvent } from './ledger-ask-event.js';
import { styles } from './ledger.styles.js';
import { defaultStrings, type LedgerStrings } from './strings.js';
import { stepsOf, type LedgerStep } from './steps.js';
import { ruleName, said, saidWhy } from '../shared/said.js';

/** Room for `23:30–00:00` to the right of a bar. */
const TIMES = 84;

/**
 * From the booked minutes of a window down to the usable ones.
 *
 * Each bar starts at the minutes left after it, so the bars visibly add up to the booked time.
 * @summary One window's ledger as a picture and as a table.
 * @tag possession-ledger
 * @event {LedgerAskEvent} possession-ledger-ask - A reader asks where a figure comes from.
 * @csspart step - One row of the picture.
 * @csspart cautions - The cautions, seen in print.
 */
export class PossessionLedger extends LitElement {
  static override readonly styles = [
    ...base,
    kindStyles,
    cautionStyles,
    styles,
    rightToLeft,
    paper,
  ];
  static override readonly properties: PropertyDeclarations = {
    ledger: { attribute: false },
    window: { attribute: false },
    asked: { attribute: false },
    asTable: { type: Boolean, attribute: 'as-table' },
    strings: { attribute: false },
  };

  declare ledger: Ledger | null;
  /** The window of the ledger, for title and zone. */
  declare window: AccessWindow | null;
  /** The row currently explained elsewhere; null: none. */
  declare asked: LedgerAskEvent['row'] | null;
  declare asTable: boolean;
  /** Texts that override the defaults. */
  declare strings: Partial<LedgerStrings>;

  readonly #words = new Words<LedgerStrings>(this, defaultStrings, {
    de: () => import('./strings.de.js'),
  });
  readonly #picture = new WidthWatch(this, '.picture', 320);
  readonly #print = new PrintWatch(this, () => this.performUpdate());

  constructor() {
    super();
    this.ledger = null;
    this.window = null;
    this.asked = null;
    this.asTable = false;
    this.strings = {};
    new Fed(this, ({ outline, selected }) => {
      const windows = outline?.plan.windows ?? [];
      this.window = windows.find((window) => window.id === selected.window) ?? windows[0] ?? null;
      this.ledger = outline?.ledgers.find((ledger) => ledger.window === this.window?.id) ?? null;
    });
  }

  override render(): TemplateResult {
    const { ledger, window } = this;
    const words = this.#words.now;
    if (!ledger || !window) return html`<p class="quiet">${words.pick}</p>`;
    return html`<header>
        <div>
          <h2>${window.id} ${window.title}</h2>
          <p class="quiet run">${stretchText(window.start, window.end, window.zone)}</p>
        </div>
        <button
          type="button"
          class="on-screen"
          aria-pressed=${this.asTable}
          @click=${() => {
            this.asTable = !this.asTable;
          }}
        >
          ${this.asTable ? words.asPicture : words.asTable}
        </button>
      </header>
      ${ledger.barred.map((reason) => html`<p class="barred">${said(reason)}</p>`)}
      ${
        ledger.shortfallMinutes > 0
          ? html`<p class="shortfall">${words.shortfall(durationText(ledger.shortfallMinutes))}</p>`
          : nothing
      }
      ${this.asTable && !this.#print.printing ? nothing : this.#renderPicture(ledger, window.zone)}
      ${this.asTable || this.#print.printing ? this.#renderTable(ledger, window.zone) : nothing}
      <div class="on-paper">${cautionList(words.cautions, words.cautionLines)}</div>`;
  }

  #renderPicture(ledger: Ledger, zone: string): TemplateResult {
    return html`<div class="picture" role="group" aria-label=${this.#words.now.picture}>
      ${this.#renderSum('gross', this.#words.now.booked, ledger.grossMinutes, ledger)}
      ${stepsOf(ledger).map((step) => this.#renderStep(step, ledger, zone))}
      ${this.#renderSum('usable', this.#words.now.usable, ledger.usableMinutes, ledger)}
    </div>`;
  }

  #renderSum(
    row: 'gross' | 'usable',
    label: string,
    minutes: number,
    ledger: Ledger,
  ): TemplateResult {
    return html`<button
      part="step"
      type="button"
      class="step sum"
      aria-pressed=${this.asked === row}
      @click=${() => this.#ask(row)}
    >
      <span class="label">${label}</span><span class="figure">${durationText(minutes)}</span>
      <svg width=${this.#bar} height="12" aria-hidden="true">
        ${kindPatterns}
        <rect
          class=${row === 'gross' ? 'gross' : 'edge usable'}
          data-minutes=${minutes}
          width=${this.#wide(minutes, ledger)}
          height="12"
          fill=${row === 'gross' ? nothing : kindFill('usable')}
        ></rect>
      </svg>
    </button>`;
  }

  #renderStep(step: LedgerStep, ledger: Ledger, zone: string): TemplateResult {
    const { row, index, left } = step;
    return html`<button
      part="step"
      type="button"
      class="step"
      aria-pressed=${this.asked === index}
      @click=${() => this.#ask(index)}
    >
      <span class="label">${ruleName(row)}</span>
      <span class="figure">&minus;${durationText(row.minutes)}</span>
      <svg width=${this.#bar} height="10" aria-hidden="true">
        ${kindPatterns}
        <line class="track" x1="0" x2=${this.#wide(left, ledger)} y1="5" y2="5"></line>
        <rect
          class="edge ${row.kind}"
          data-minutes=${row.minutes}
          x=${this.#wide(left, ledger)}
          y="0.5"
          width=${this.#wide(row.minutes, ledger)}
          height="9"
          fill=${kindFill(row.kind)}
        ></rect>
      </svg>
      <span class="when clock-run"
        ><span class="unseen">${this.#words.now.kind[row.kind]}, </span
        >${clockText(row.start, zone)}&ndash;${clockText(row.end, zone)}</span
      >
    </button>`;
  }

  #renderTable(ledger: Ledger, zone: string): TemplateResult {
    const words = this.#words.now;
    return html`<div class="scroll" tabindex="0" role="region" aria-label=${words.table}>
      <table>
        <thead>
          <tr>
            <th scope="col">${words.from}</th>
            <th scope="col">${words.to}</th>
            <th scope="col">${words.rule}</th>
            <th scope="col" class="figure">${words.minutes}</th>
          </tr>
        </thead>
        <tbody>
          ${ledger.rows.map(
            (row, index) =>
              html`<tr>
                <td>${clockText(row.start, zone)}</td>
                <td>${clockText(row.end, zone)}</td>
                <td>
                  <button class="plain" type="button" @click=${() => this.#ask(index)}>
                    ${ruleName(row)}
                  </button>
                  <div class="quiet">${words.kind[row.kind]}. ${saidWhy(row)}</div>
                </td>
                <td class="figure">${row.minutes}</td>
              </tr>`,
          )}
          <tr>
            <th scope="row" colspan="3">${words.bookedSum}</th>
            <td class="figure"><strong>${ledger.grossMinutes}</strong></td>
          </tr>
          <tr>
            <th scope="row" colspan="3">${words.ofItUsable}</th>
            <td class="figure"><strong>${ledger.usableMinutes}</strong></td>
          </tr>
        </tbody>
      </table>
    </div>`;
  }

  get #bar(): number {
    const width = this.#print.printing ? PORTRAIT : this.#picture.width;
    return Math.max(40, width - 12 - TIMES);
  }

  #wide(minutes: number, ledger: Ledger): number {
    return ledger.grossMinutes === 0 ? 0 : (minutes / ledger.grossMinutes) * this.#bar;
  }

  #ask(row: LedgerAskEvent['row']): void {
    this.asked = row;
    this.dispatchEvent(new LedgerAskEvent(this.ledger?.window ?? '', row));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'possession-ledger': PossessionLedger;
  }
}
