import { html, svg, type TemplateResult } from 'lit';

/** Whether a change helps: it picks the shape and the colour; sign and words stand beside it. */
export type Sense = 'better' | 'worse' | 'even';

const shapes = {
  better: svg`<path d="M6 2 11 10H1Z"></path>`,
  worse: svg`<path d="M6 10 1 2H11Z"></path>`,
  even: svg`<path d="M1 4H11M1 8H11"></path>`,
};

/** A change as shape and words: an upright triangle is better, one on its tip worse, two level lines the same. */
export function changeMark(sense: Sense, text: string): TemplateResult {
  return html`<span class="mark ${sense}"
    ><svg width="12" height="12" aria-hidden="true">${shapes[sense]}</svg><span>${text}</span></span
  >`;
}
