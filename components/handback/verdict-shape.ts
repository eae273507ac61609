import { html, svg, type TemplateResult } from 'lit';
import type { Verdict } from './result-parts.js';

/** A full disc, a square, a half disc, a triangle: shapes that stay apart in one colour. */
export function verdictShape(verdict: Verdict): TemplateResult {
  const shape = {
    held: svg`<circle cx="6" cy="6" r="5"></circle>`,
    eaten: svg`<circle class="ring" cx="6" cy="6" r="4.25"></circle><path d="M6 1.75 A4.25 4.25 0 0 1 6 10.25 Z"></path>`,
    'chance-low': svg`<path d="M1 1 H11 V11 H1 Z"></path>`,
    overrun: svg`<path d="M6 0.5 L11.75 11 H0.25 Z"></path>`,
  }[verdict];
  return html`<svg class="mark" viewBox="0 0 12 12" width="12" height="12" aria-hidden="true">
    ${shape}
  </svg>`;
}

/** The shape with its word. */
export function verdictTag(verdict: Verdict, word: string): TemplateResult {
  return html`<span class="verdict ${verdict}">${verdictShape(verdict)}${word}</span>`;
}
