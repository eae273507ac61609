import { html, LitElement, type PropertyDeclarations, type TemplateResult } from 'lit';
import type { LiftingAnswer } from '../../src/engine/index.js';
import { LimitsChangeEvent } from '../people/limits-change-event.js';
import { base } from '../shared/base.js';
import { cautionList, cautionStyles } from '../shared/cautions.js';
import { siteStyles } from '../shared/site.styles.js';
import { paper, PORTRAIT } from '../shared/paper.js';
import { PrintWatch } from '../shared/print-watch.js';
import { WidthWatch } from '../shared/width-watch.js';
import { Words } from '../shared/words.js';
import { concretePart } from './concrete-part.js';
import { styles } from './lifting.styles.js';
import { defaultStrings, type LiftingStrings } from './strings.js';
import { windPart } from './wind-part.js';

/**
 * A forecast of wind against the limit for lifting, with the hours lost in each window, and concrete gaining strength
 * in the temperatures given, with the moment at which what waits for it may start.
 * @summary Hours lost to wind, and when concrete has cured.
 * @tag possession-lifting
 * @event {LimitsChangeEvent} possession-limits-change - A reader changed limits (`part` is `lifting` or `concrete`).
 * @csspart wind - The forecast against the limit.
 * @csspart curing - Concrete along time.
 * @csspart cautions - The cautions.
 */
export class PossessionLifting extends LitElement {
  static override readonly styles = [...base, cautionStyles, ...siteStyles, styles, paper];
  static override readonly properties: PropertyDeclarations = {
    answer: { attribute: false },
    strings: { attribute: false },
  };

  declare answer: LiftingAnswer | null;
  declare strings: Partial<LiftingStrings>;

  readonly #words = new Words<LiftingStrings>(this, defaultStrings, {
    de: () => import('./strings.de.js'),
  });

  readonly #frame = new WidthWatch(this, '.picture', 640);
  readonly #print = new PrintWatch(this, () => this.performUpdate());

  constructor() {
    super();
    this.answer = null;
    this.strings = {};
  }

  override render(): TemplateResult {
    const words = this.#words.now;
    const { answer } = this;
    if (!answer) return html`<p class="quiet"></p>`;
    const { wind, concrete, zone } = answer;
    const width = this.#print.printing ? PORTRAIT - 40 : this.#frame.width;
    return html`<div class="head"><h2>${words.title}</h2></div>
      ${cautionList(words.cautions, words.cautionLines)}
      ${windPart(wind, zone, width, words, (settings) =>
        this.dispatchEvent(new LimitsChangeEvent('lifting', settings)),
      )}
      ${concretePart(concrete, zone, width, words, (settings) =>
        this.dispatchEvent(new LimitsChangeEvent('concrete', settings)),
      )}`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'possession-lifting': PossessionLifting;
  }
}
