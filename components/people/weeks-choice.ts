import { html, nothing, type TemplateResult } from 'lit';
import type { PeopleStrings } from './strings.js';

export interface WeeksChoice {
  /** Weeks shown at once; 0: all. */
  readonly weeks: number;
  /** The page shown, from 0. */
  readonly page: number;
  readonly pages: number;
  readonly show: (weeks: number, page: number) => void;
}

/** How many weeks of the roster are drawn, and the way on to those before and after. */
export function weeksChoice(
  { weeks: shown, page, pages, show }: WeeksChoice,
  words: PeopleStrings,
): TemplateResult {
  return html`<div class="choice" role="group" aria-label=${words.shown}>
    ${[0, 4, 2, 1].map(
      (weeks) =>
        html`<button
          type="button"
          data-weeks=${weeks}
          aria-pressed=${shown === weeks}
          @click=${() => show(weeks, 0)}
        >
          ${weeks === 0 ? words.all : words.weeks(weeks)}
        </button>`,
    )}
    ${
      pages > 1
        ? html`<button type="button" ?disabled=${page === 0} @click=${() => show(shown, page - 1)}>
              ${words.earlier}
            </button>
            <button
              type="button"
              ?disabled=${page >= pages - 1}
              @click=${() => show(shown, page + 1)}
            >
              ${words.later}
            </button>`
        : nothing
    }
  </div>`;
}
