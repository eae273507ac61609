import { html, type TemplateResult } from 'lit';
import type { Figure } from '../shared/figure-ask-event.js';
import type { OverrunStrings } from './strings.js';

/** Called when a reader asks where a figure comes from. */
export type AskFigure = (figure: Figure) => void;

/**
 * A figure as a button that asks where it comes from.
 * @param text Accessible text of the figure, currency included.
 */
export const askFigure = (
  shown: string | TemplateResult,
  text: string,
  figure: Figure,
  ask: AskFigure,
  strings: OverrunStrings,
): TemplateResult =>
  html`<button
    type="button"
    class="plain ask"
    aria-label="${text}, ${strings.why}"
    @click=${() => ask(figure)}
  >
    ${shown}
  </button>`;
