import {
  html,
  LitElement,
  nothing,
  svg,
  type PropertyDeclarations,
  type PropertyValues,
  type SVGTemplateResult,
  type TemplateResult,
} from 'lit';
import { durationText, MINUTE, type Instant } from '../../src/calendar/index.js';
import type { AccessWindow } from '../../src/model/index.js';
import type { Ledger } from '../../src/rules/types.js';
import { base } from '../shared/base.js';
import { cautionList, cautionStyles } from '../shared/cautions.js';
import { clockText, dayText, stretchText } from '../shared/format.js';
import { kindFill, kindPatterns, kindStyles, kindSwatch, ledgerKinds } from '../shared/kinds.js';
import { paper, PORTRAIT } from '../shared/paper.js';
import { PrintWatch } from '../shared/print-watch.js';
import { rightToLeft } from '../shared/right-to-left.js';
import { WidthWatch } from '../shared/width-watch.js';
import { linesOf, spanOf, type RibbonLine } from './lines.js';
import { styles } from './ribbon.styles.js';
import { defaultStrings, type RibbonStrings } from './strings.js';
import { WindowSelectEvent } from './window-select-event.js';
import { usableText, windowTable } from './window-table.js';

const GUTTER = 70;
const EDGE = 8;
/** Room for `23:30` beside a bar that ends near the edge. */
const LABEL = 40;
/** Room for `clocks +1 h` beyond that. */
const WORDS = 84;
const LINE = 28;
/** On a sheet of paper: what names and usable time leave for the drawing. */
const ON_PAPER = PORTRAIT - 232;

/**
 * Windows drawn along elapsed time from noon to noon, so that nights stand under each other and a long closure folds
 * into one line a day. A night on which clocks go forward is an hour shorter here, because it is.
 *
 * Keyboard: ARIA listbox pattern (arrows, Home, End; the selection follows the focus).
 * @summary One row a window, with its ledger drawn in time.
 * @tag possession-ribbon
 * @event {WindowSelectEvent} possession-window-select - A reader picks a window.
 * @csspart row - One window.
 * @csspart cautions - The cautions, seen in print.
 */
export class PossessionRibbon extends LitElement {
  static override readonly styles = [
    ...base,
    kindStyles,
    cautionStyles,
    styles,
    rightToLeft,
    paper,
  ];
  static override readonly properties: PropertyDeclarations = {
    windows: { attribute: false },
    ledgers: { attribute: false },
    selected: { type: String, reflect: true },
    asTable: { type: Boolean, attribute: 'as-table' },
    strings: { attribute: false },
  };

  declare windows: readonly AccessWindow[];
  /** Matched to the windows by id; a window without one is drawn as an outline. */
  declare ledgers: readonly Ledger[];
  /** Id of the window picked; empty: none. */
  declare selected: string;
  /** Shows the same figures as a table. */
  declare asTable: boolean;
  /** Words to use in place of the element's own. */
  declare strings: Partial<RibbonStrings>;

  #lines = new Map<string, RibbonLine[]>();
  #ledgers = new Map<string, Ledger>();
  #span = { from: 0, to: 1440 };
  #edge = { left: EDGE, right: EDGE };
  readonly #drawing = new WidthWatch(this, '.axis .drawing', 720);
  readonly #print = new PrintWatch(this, () => this.performUpdate());

  constructor() {
    super();
    this.windows = [];
    this.ledgers = [];
    this.selected = '';
    this.asTable = false;
    this.strings = {};
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (!changed.has('windows') && !changed.has('ledgers')) return;
    this.#ledgers = new Map(this.ledgers.map((ledger) => [ledger.window, ledger]));
    // A window that takes no work has no usable time to draw: it stays an outline.
    this.#lines = new Map(
      this.windows.map((one) => {
        const ledger = this.#ledgers.get(one.id);
        return [one.id, linesOf(one, ledger?.barred.length ? undefined : ledger)];
      }),
    );
    const lines = [...this.#lines.values()].flat();
    this.#span = spanOf(lines);
    this.#edge = edgesFor(lines, this.#span);
  }

  override render(): TemplateResult {
    const words = this.#words;
    return html`<div class="top">
        <ul class="key" aria-label=${words.key}>
          ${ledgerKinds.map(
            (kind) =>
              html`<li>
                <svg width="16" height="12" aria-hidden="true">
                  ${kindPatterns}${kindSwatch(kind)}</svg
                >${words.kind[kind]}
              </li>`,
          )}
        </ul>
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
      </div>
      ${
        this.asTable
          ? windowTable(this.windows, this.#ledgers, this.#words)
          : this.#print.printing
            ? this.#renderSheet()
            : this.#renderPicture()
      }
      <div class="on-paper">${cautionList(words.cautions)}</div>`;
  }

  #renderPicture(): TemplateResult {
    const words = this.#words;
    return html`<div class="axis" aria-hidden="true">
        <span>${words.axis}</span>
        <div class="drawing">${this.#renderAxis()}</div>
        <span class="figure">${words.usable}</span>
      </div>
      <div role="listbox" aria-label=${words.list} @keydown=${this.#onKey} @click=${this.#onClick}>
        ${this.windows.map((one, index) => this.#renderRow(one, index))}
      </div>`;
  }

  /** The picture as a table, so that the hours stand at the head of every sheet of paper. */
  #renderSheet(): TemplateResult {
    const words = this.#words;
    return html`<table class="sheet">
      <thead>
        <tr>
          <th scope="col">${words.window}</th>
          <th scope="col">${this.#renderAxis()}</th>
          <th scope="col" class="figure">${words.usable}</th>
        </tr>
      </thead>
      <tbody>
        ${this.windows.map(
          (one) =>
            html`<tr>
              <th scope="row">
                ${one.id} ${one.title}<span class="status">${this.#statusOf(one)}</span>
              </th>
              <td>${this.#renderLines(one)}</td>
              <td class="figure">
                <strong>${usableText(this.#ledgers.get(one.id), words)}</strong
                ><br />${words.of(grossText(one))}
              </td>
            </tr>`,
        )}
      </tbody>
    </table>`;
  }

  #renderAxis(): SVGTemplateResult | TemplateResult {
    const step = this.#perHour > 26 ? 1 : this.#perHour > 13 ? 2 : 3;
    const hours: number[] = [];
    for (let at = this.#span.from; at <= this.#span.to; at += 60)
      if (((at / 60 + 12) % 24) % step === 0) hours.push(at);
    return html`<svg width=${this.#wide} height="20">
      ${hours.map(
        (at) =>
          svg`<text x=${this.#x(at)} y="14" text-anchor="middle">${String((at / 60 + 12) % 24).padStart(2, '0')}</text>`,
      )}
    </svg>`;
  }

  #renderRow(one: AccessWindow, index: number): TemplateResult {
    const words = this.#words;
    const chosen = one.id === this.selected;
    const reachable = chosen || (index === 0 && !this.windows.some((w) => w.id === this.selected));
    return html`<div
      part="row"
      class="row ${one.status}"
      role="option"
      data-id=${one.id}
      tabindex=${reachable ? 0 : -1}
      aria-selected=${chosen}
    >
      <div class="name">
        <strong>${one.id}</strong><span class="title">${one.title}</span
        ><span class="status">${this.#statusOf(one)}</span>
      </div>
      ${this.#renderLines(one)}
      <div class="hours">
        <span class="unseen">${words.usableOf(stretchText(one.start, one.end, one.zone))}</span
        ><strong><span class="run">${usableText(this.#ledgers.get(one.id), words)}</span></strong
        ><span class="run"> ${words.of(grossText(one))}</span>
      </div>
    </div>`;
  }

  #renderLines(one: AccessWindow): TemplateResult {
    const lines = this.#lines.get(one.id) ?? [];
    return html`<svg
      class="drawing"
      width=${this.#wide}
      height=${lines.length * LINE}
      aria-hidden="true"
    >
      ${kindPatterns}${lines.map((line, at) => this.#renderLine(one, line, at * LINE))}
    </svg>`;
  }

  #statusOf(one: AccessWindow): string {
    const words = this.#words;
    return `${words.status[one.status]}${one.isolation.length > 0 ? `, ${words.isolated}` : ''}`;
  }

  #renderLine(one: AccessWindow, line: RibbonLine, top: number): SVGTemplateResult {
    const x = (at: Instant): number => this.#x((at - line.noon) / MINUTE);
    const midnight = this.#x(720);
    const bar = { y: top + 6, height: LINE - 10 };
    const start = x(line.start);
    const end = x(line.end);
    return svg`<g>
      <line class="tick midnight" x1=${midnight} x2=${midnight} y1=${top} y2=${top + LINE}></line>
      <text class="date" x="0" y=${top + 19}>${dayText(line.start, one.zone)}</text>
      ${line.rows.map((row) => {
        const left = x(row.start);
        const width = x(row.end) - left;
        const minutes = Math.round((row.end - row.start) / MINUTE);
        const word = row.kind === 'usable' ? durationText(minutes) : '';
        return svg`<rect class="edge ${row.kind}" x=${left + 0.5} y=${bar.y} width=${Math.max(0.5, width - 1)} height=${bar.height} fill=${kindFill(row.kind)}><title>${row.rule}: ${durationText(row.minutes)}. ${row.why}</title></rect>
        ${
          word !== '' && width > word.length * 6.6 + 8
            ? svg`<text class="inside usable" x=${left + width / 2} y=${bar.y + 13} text-anchor="middle">${word}</text>`
            : nothing
        }`;
      })}
      ${
        line.rows.length === 0
          ? svg`<rect class="outline ${one.status}" x=${start + 0.5} y=${bar.y} width=${Math.max(1, end - start - 1)} height=${bar.height}></rect>`
          : nothing
      }
      ${line.first ? svg`<text class="end halo" x=${start - 4} y=${top + 19} text-anchor="end">${clockText(one.start, one.zone)}</text>` : nothing}
      ${line.last ? svg`<text class="end halo" x=${end + 4} y=${top + 19}>${clockText(one.end, one.zone)}</text>` : nothing}
      ${line.changes.map(
        (
          change,
        ) => svg`<line class="change" x1=${x(change.at)} x2=${x(change.at)} y1=${top + 1} y2=${top + LINE - 1}></line>
        ${this.#renderChange(change, start - 40, end + 40, top)}`,
      )}
    </g>`;
  }

  /** The words stand on the side of the window with more room. */
  #renderChange(
    change: RibbonLine['changes'][number],
    before: number,
    after: number,
    top: number,
  ): SVGTemplateResult {
    const room = { right: this.#wide - after, left: before - GUTTER };
    const right = room.right > room.left;
    const size = durationText(Math.abs(change.forwardMinutes));
    const words = this.#words;
    const long = change.forwardMinutes > 0 ? words.clocksForward(size) : words.clocksBack(size);
    const short = words.clocks(`${change.forwardMinutes > 0 ? '+' : '\u2212'}${size}`);
    const text = Math.max(room.right, room.left) > long.length * 7 ? long : short;
    return svg`<text class="change-text halo" x=${right ? after : before} y=${top + 19} text-anchor=${right ? 'start' : 'end'}>${text}</text>`;
  }

  get #words(): RibbonStrings {
    return { ...defaultStrings, ...this.strings };
  }

  get #wide(): number {
    return this.#print.printing ? ON_PAPER : this.#drawing.width;
  }

  get #perHour(): number {
    const room = this.#wide - GUTTER - this.#edge.left - this.#edge.right;
    return Math.max(1, (room / (this.#span.to - this.#span.from)) * 60);
  }

  #x(minutesAfterNoon: number): number {
    const at =
      GUTTER + this.#edge.left + ((minutesAfterNoon - this.#span.from) / 60) * this.#perHour;
    return Math.round(at * 100) / 100;
  }

  #select(id: string): void {
    if (id === this.selected) return;
    this.selected = id;
    this.dispatchEvent(new WindowSelectEvent(id));
  }

  readonly #onClick = (event: Event): void => {
    const row = (event.target as Element).closest<HTMLElement>('[data-id]');
    if (!row) return;
    row.focus();
    this.#select(row.dataset['id'] ?? '');
  };

  readonly #onKey = (event: KeyboardEvent): void => {
    const at = Math.max(
      0,
      this.windows.findIndex((one) => one.id === this.selected),
    );
    const last = this.windows.length - 1;
    const moves: Record<string, number> = {
      ArrowUp: Math.max(0, at - 1),
      ArrowDown: Math.min(last, at + 1),
      Home: 0,
      End: last,
      Enter: at,
      ' ': at,
    };
    const to = this.windows[moves[event.key] ?? -1];
    if (!to) return;
    event.preventDefault();
    this.#select(to.id);
    void this.updateComplete.then(() =>
      this.renderRoot.querySelector<HTMLElement>('[role=option][aria-selected=true]')?.focus(),
    );
  };
}

/** A bar that starts or ends near the edge needs room outside it for the time it starts or ends. */
function edgesFor(lines: readonly RibbonLine[], span: { from: number; to: number }) {
  const near = 120;
  const after = (line: RibbonLine, at: Instant): number => (at - line.noon) / MINUTE;
  const left = lines.some((one) => one.first && after(one, one.start) - span.from < near);
  const right = lines.some((one) => one.last && span.to - after(one, one.end) < near);
  // A clock change near both edges has its words beyond the end.
  const words = lines.some(
    (one) => one.changes.length > 0 && span.to - after(one, one.end) < near && left,
  );
  return { left: left ? LABEL : EDGE, right: words ? LABEL + WORDS : right ? LABEL : EDGE };
}

function grossText(one: AccessWindow): string {
  return durationText((one.end - one.start) / MINUTE);
}

declare global {
  interface HTMLElementTagNameMap {
    'possession-ribbon': PossessionRibbon;
  }
}
