import {
  html,
  LitElement,
  nothing,
  type PropertyDeclarations,
  type PropertyValues,
  type TemplateResult,
} from 'lit';
import { base } from '../shared/base.js';
import { paper, PORTRAIT } from '../shared/paper.js';
import { PrintWatch } from '../shared/print-watch.js';
import { WidthWatch } from '../shared/width-watch.js';
import { Words } from '../shared/words.js';
import { ChartPickEvent } from './chart-pick-event.js';
import { chartTable } from './chart-table.js';
import { styles } from './chart.styles.js';
import type { Drawing } from './draw.js';
import { fillOf, lookOf, TONES } from './look.js';
import { pointWords, type ChartShown } from './shown.js';
import { firstSpan, holding, nearer, wholeOf, wider, type Span } from './zoom.js';
import { defaultStrings, type ChartStrings } from './strings.js';

/** Dots to a CSS pixel on paper: 384 to the inch. */
const PAPER_RATIO = 4;
const PAPER_HEIGHT = 280;
const PROBES = ['paper', 'ink', 'soft', 'hair'];

/**
 * A chart with its key, its readout and its table. Pointer and arrow keys read each point, T turns to the table, a click or
 * Enter picks a point; where it zooms, plus and minus look nearer and wider, 0 at all of it. On paper it is black on white at the sheet's resolution.
 *
 * @summary A chart of figures, read by pointer and keyboard, with its table.
 * @tag possession-chart
 * @event {ChartPickEvent} possession-chart-pick - A reader picks a point.
 * @slot table - A table in place of the chart's own; it stands under the picture on paper.
 * @csspart frame - What the picture stands in.
 * @csspart readout - The point that is read, in words.
 * @cssprop [--possession-chart-height=17rem] - Height of the picture.
 */
export class PossessionChart extends LitElement {
  static override readonly styles = [...base, styles, paper];
  static override readonly properties: PropertyDeclarations = {
    shown: { attribute: false },
    picked: { type: Number },
    strings: { attribute: false },
  };

  declare shown: ChartShown | null;
  /** Place of the point that is marked; null: none. Reading moves it. */
  declare picked: number | null;
  /** Words in place of the default ones. */
  declare strings: Partial<ChartStrings>;

  readonly #words = new Words<ChartStrings>(this, defaultStrings, {
    de: () => import('./strings.de.js'),
  });

  #asTable = false;
  #failed = false;
  /** The point under the pointer; it goes before the picked one while the pointer is there. */
  #under: number | null = null;
  /** The part that a reader looks at; null: as it is first shown. */
  #span: Span | null = null;
  #drawing: Drawing | undefined;
  #canvas: HTMLCanvasElement | undefined;
  readonly #width = new WidthWatch(this, '.frame', 0);
  readonly #print = new PrintWatch(this, () => this.performUpdate());
  readonly #queries = ['(prefers-color-scheme: dark)', '(forced-colors: active)'].map((text) =>
    globalThis.matchMedia?.(text),
  );
  #scheme: MutationObserver | undefined;

  constructor() {
    super();
    this.shown = null;
    this.picked = null;
    this.strings = {};
  }

  override connectedCallback(): void {
    super.connectedCallback();
    for (const query of this.#queries) query?.addEventListener('change', this.#again);
    // A page may turn light or dark by an attribute, of which no query tells.
    this.#scheme = new MutationObserver(this.#again);
    this.#scheme.observe(document.documentElement, {
      attributeFilter: ['class', 'style', 'data-theme'],
    });
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    for (const query of this.#queries) query?.removeEventListener('change', this.#again);
    this.#scheme?.disconnect();
    this.#drawing?.destroy();
    this.#drawing = undefined;
    this.#canvas = undefined;
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    const most = (this.shown?.points.length ?? 0) - 1;
    if (changed.has('shown') && this.picked !== null && this.picked > most) this.picked = null;
    if (!changed.has('shown')) return;
    this.#under = null;
    const before = changed.get('shown');
    // The same scale again is looked at where it was.
    if (String(before && wholeOf(before)) !== String(this.shown && wholeOf(this.shown)))
      this.#span = null;
  }

  override render(): TemplateResult | typeof nothing {
    const { shown } = this;
    if (!shown || shown.points.length === 0) return nothing;
    const words = this.#words.now;
    const read = this.#under ?? this.picked;
    const table = this.#asTable || this.#failed;
    const said = read === null ? words.read : pointWords(shown, read);
    return html`<div class="probes" aria-hidden="true">
        ${PROBES.map((text) => html`<span class=${text}></span>`)}
        ${Array.from({ length: TONES }, (_, i) => html`<span class="tone-${i}"></span>`)}
      </div>
      ${
        shown.series.length > 1
          ? html`<ul class="keys">
              ${shown.series.map(
                (item) =>
                  html`<li>
                    <canvas
                      class="tone-${item.tone}"
                      width="16"
                      height="10"
                      aria-hidden="true"
                    ></canvas
                    >${item.name}
                  </li>`,
              )}
            </ul>`
          : nothing
      }
      ${this.#failed ? html`<p>${words.failed}</p>` : nothing}
      ${
        table
          ? html`<slot name="table">${chartTable(shown)}</slot>`
          : html`<div
              part="frame"
              class="frame"
              tabindex="0"
              role="slider"
              aria-label=${shown.title}
              aria-valuemin="0"
              aria-valuemax=${shown.points.length - 1}
              aria-valuenow=${this.picked ?? 0}
              aria-valuetext=${pointWords(shown, this.picked ?? 0)}
              aria-orientation=${shown.lying ? 'vertical' : 'horizontal'}
              @keydown=${this.#onKey}
              @pointermove=${this.#onMove}
              @pointerleave=${this.#onLeave}
              @click=${this.#onClick}
            >
              <canvas aria-hidden="true"></canvas>
            </div>`
      }
      ${this.#print.printing && !table ? html`<slot name="table"></slot>` : nothing}
      <div class="under">
        <p part="readout" class="readout on-screen" role="status">${table ? nothing : said}</p>
        ${shown.zooms && !table ? this.#renderZoom(shown, words) : nothing}
        ${
          this.#failed
            ? nothing
            : html`<button type="button" class="plain on-screen" @click=${this.#turn}>
                ${table ? words.picture : words.table}
              </button>`
        }
      </div>`;
  }

  #renderZoom(shown: ChartShown, words: ChartStrings): TemplateResult | typeof nothing {
    const whole = wholeOf(shown);
    const span = this.#span ?? firstSpan(shown);
    if (!whole || !span) return nothing;
    const isWhole = span[0] <= whole[0] && span[1] >= whole[1];
    const button = (word: string, key: string, off: boolean): TemplateResult =>
      html`<button type="button" ?disabled=${off} @click=${() => this.#zoom(key)}>${word}</button>`;
    return html`<div class="zoom on-screen" role="group" aria-label=${words.zoomKeys}>
      ${button(words.nearer, '+', false)} ${button(words.wider, '-', isWhole)}
      ${button(words.whole, '0', isWhole)}
    </div>`;
  }

  protected override updated(): void {
    if (this.shown && this.shown.points.length > 0 && !this.#failed) void this.#draw();
  }

  async #draw(): Promise<void> {
    const canvas = this.renderRoot.querySelector<HTMLCanvasElement>('.frame canvas') ?? undefined;
    if (canvas !== this.#canvas) {
      this.#drawing?.destroy();
      this.#drawing = undefined;
      this.#canvas = canvas;
      if (canvas) {
        try {
          const { drawingOn } = await import('./draw.js');
          if (canvas !== this.#canvas || !this.isConnected) return;
          this.#drawing = drawingOn(canvas);
        } catch {
          this.#failed = true;
          this.requestUpdate();
          return;
        }
      }
    }
    this.#paint();
  }

  #paint(): void {
    const { shown } = this;
    const printing = this.#print.printing;
    if (!shown) return;
    const look = lookOf([...this.renderRoot.querySelectorAll('.probes > *')], printing);
    for (const [i, key] of [
      ...this.renderRoot.querySelectorAll<HTMLCanvasElement>('.keys canvas'),
    ].entries()) {
      const pen = key.getContext('2d');
      if (!pen) continue;
      pen.fillStyle = fillOf(look, shown.series[i]!.tone);
      pen.fillRect(0, 0, key.width, key.height);
    }
    const width = printing ? PORTRAIT : this.#width.width;
    const frame = this.renderRoot.querySelector<HTMLElement>('.frame');
    if (width <= 0 || !frame) return;
    const height = printing ? PAPER_HEIGHT : Math.max(80, frame.clientHeight);
    const ratio = printing ? PAPER_RATIO : Math.max(1, globalThis.devicePixelRatio);
    const span = this.#span ?? firstSpan(shown);
    this.#drawing?.show(shown, look, { width, height, ratio, span }, this.#under ?? this.picked);
  }

  readonly #again = (): void => this.requestUpdate();

  readonly #turn = (): void => {
    this.#asTable = !this.#asTable;
    this.requestUpdate();
  };

  readonly #onKey = (event: KeyboardEvent): void => {
    const { shown } = this;
    if (!shown || event.ctrlKey || event.metaKey || event.altKey) return;
    const last = shown.points.length - 1;
    const page = Math.max(1, Math.round(last / 12));
    const at = this.picked ?? 0;
    const steps: Readonly<Record<string, number>> = {
      ArrowRight: at + 1,
      ArrowLeft: at - 1,
      ArrowUp: shown.lying ? at - 1 : at + 1,
      ArrowDown: shown.lying ? at + 1 : at - 1,
      PageUp: at + page,
      PageDown: at - page,
      Home: 0,
      End: last,
    };
    const next = steps[event.key];
    if (next !== undefined) {
      event.preventDefault();
      this.#under = null;
      this.picked = this.picked === null ? at : Math.min(last, Math.max(0, next));
      this.#hold(this.picked);
    } else if (event.key === 'Enter' && this.picked !== null) {
      this.dispatchEvent(new ChartPickEvent(this.picked));
    } else if (shown.zooms && ['+', '=', '-', '0'].includes(event.key)) {
      event.preventDefault();
      this.#zoom(event.key === '=' ? '+' : event.key);
    } else if (event.key.toLowerCase() === 't') {
      event.preventDefault();
      this.#turn();
      void this.updateComplete.then(() =>
        (
          this.querySelector<HTMLElement>('[slot=table]') ??
          this.renderRoot.querySelector<HTMLElement>('.scroll')
        )?.focus(),
      );
    }
  };

  /** Nearer about the point that is read, else about the middle. */
  #zoom(key: string): void {
    const { shown } = this;
    const whole = shown && wholeOf(shown);
    const span = this.#span ?? (shown && firstSpan(shown));
    if (!whole || !span) return;
    const read = this.#under ?? this.picked;
    const point = read === null ? undefined : shown.points[read];
    const inSpan = typeof point === 'number' && point >= span[0] && point <= span[1];
    const about = inSpan ? point : (span[0] + span[1]) / 2;
    this.#span =
      key === '0' ? whole : key === '-' ? wider(span, whole) : nearer(span, whole, about);
    this.requestUpdate();
  }

  /** The point that is read stays in sight. */
  #hold(index: number): void {
    const { shown } = this;
    const whole = shown && wholeOf(shown);
    const span = this.#span ?? (shown && firstSpan(shown));
    const point = shown?.points[index];
    if (whole && span && typeof point === 'number') this.#span = holding(span, whole, point);
  }

  #pointOf(event: MouseEvent): number | null {
    const box = (event.currentTarget as Element).getBoundingClientRect();
    return this.#drawing?.pointAt(event.clientX - box.left, event.clientY - box.top) ?? null;
  }

  readonly #onMove = (event: PointerEvent): void => {
    const index = this.#pointOf(event);
    if (index === this.#under) return;
    this.#under = index;
    this.requestUpdate();
  };

  readonly #onLeave = (): void => {
    this.#under = null;
    this.requestUpdate();
  };

  readonly #onClick = (event: MouseEvent): void => {
    const index = this.#pointOf(event);
    if (index === null) return;
    this.picked = index;
    this.dispatchEvent(new ChartPickEvent(index));
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'possession-chart': PossessionChart;
  }
}
