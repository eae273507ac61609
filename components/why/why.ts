import { html, LitElement, nothing, type PropertyDeclarations, type TemplateResult } from 'lit';
import { base } from '../shared/base.js';
import { Words } from '../shared/words.js';
import { paper } from '../shared/paper.js';
import { rightToLeft } from '../shared/right-to-left.js';
import { kindPatterns, kindStyles, kindSwatch } from '../shared/kinds.js';
import type { Explanation, ExplanationRow, Place } from './explanation.js';
import { WhyLinkEvent } from './why-events.js';
import { defaultStrings, type WhyStrings } from './strings.js';
import { styles } from './why.styles.js';

/**
 * Where a number comes from.
 *
 * @summary A number, the sentence that says what it means, the rows it is made of, the rule behind it, and ways back.
 * @tag possession-why
 * @event {WhyLinkEvent} possession-why-link - A reader follows a link to a window, a package or a cell.
 * @csspart number - The figure itself.
 */
export class PossessionWhy extends LitElement {
  static override readonly styles = [...base, kindStyles, styles, rightToLeft, paper];
  static override readonly properties: PropertyDeclarations = {
    explanation: { attribute: false },
    strings: { attribute: false },
  };

  /** What to explain; null shows how to ask. */
  declare explanation: Explanation | null;
  /** Words to use in place of the element's own. */
  declare strings: Partial<WhyStrings>;

  readonly #words = new Words<WhyStrings>(this, defaultStrings, {
    de: () => import('./strings.de.js'),
  });

  constructor() {
    super();
    this.explanation = null;
    this.strings = {};
  }

  override render(): TemplateResult {
    const explanation = this.explanation;
    const words = this.#words.now;
    if (!explanation) return html`<p class="empty">${words.empty}</p>`;
    const lang = explanation.lang ?? 'en';
    return html`<section aria-label=${words.section}>
      <h2 class="title" lang=${lang}>${explanation.title}</h2>
      <p part="number" class="number run ${explanation.tone ?? ''}" lang=${lang}>
        ${explanation.figure}
      </p>
      <p class="sentence run" lang=${lang}>${explanation.sentence}</p>
      ${
        explanation.rows.length > 0
          ? html`<h3 lang=${explanation.rowsTitle === undefined ? nothing : lang}>
                ${explanation.rowsTitle ?? words.rows}
              </h3>
              <ul class="rows" lang=${lang}>
                ${explanation.rows.map((row) => this.#renderRow(row))}
              </ul>`
          : nothing
      }
      ${
        explanation.rule
          ? html`<h3>${words.rule}</h3>
              <div class="rule">
                <span lang=${lang}
                  ><strong>${explanation.rule.name}</strong>${explanation.rule.text}</span
                >
                <div class="quiet">${words.source(explanation.rule.source)}</div>
              </div>`
          : nothing
      }
      ${
        explanation.links.length > 0
          ? html`<h3>${words.links}</h3>
              <ul class="links" lang=${lang}>
                ${explanation.links.map(
                  (link) =>
                    html`<li>
                      <button class="plain" type="button" @click=${() => this.#follow(link.place)}>
                        ${link.text}
                      </button>
                    </li>`,
                )}
              </ul>`
          : nothing
      }
    </section>`;
  }

  #renderRow(row: ExplanationRow): TemplateResult {
    const { place } = row;
    return html`<li class=${row.strong ? 'strong' : ''}>
      ${row.kind ? html`<svg width="16" height="12" aria-hidden="true">${kindPatterns}${kindSwatch(row.kind)}</svg>` : nothing}
      <span class="label"
        >${
          place
            ? html`<button class="plain" type="button" @click=${() => this.#follow(place)}>
                ${row.label}
              </button>`
            : row.label
        }</span
      >
      <span class="figure"><span class="run">${row.figure}</span></span>
      ${row.note ? html`<span class="note run">${row.note}</span>` : nothing}
    </li>`;
  }

  #follow(place: Place): void {
    this.dispatchEvent(new WhyLinkEvent(place));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'possession-why': PossessionWhy;
  }
}
