import { html, type TemplateResult } from 'lit';
import type { SheetState } from '../sheet-state.js';

export interface ResultsActs {
  /** Sets the ids of the calculated columns to show, in order. */
  readonly choose: (ids: readonly string[]) => void;
  readonly close: () => void;
}

/** Chooses which calculated columns are shown, and in what order. */
export function resultsBar(sheet: SheetState, { choose, close }: ResultsActs): TemplateResult {
  const { words, columns } = sheet;
  const shown = columns.resultsShown;
  const rest = columns.results
    .filter((result) => !shown.includes(result.id))
    .map((result) => result.id);
  const heading = (id: string): string =>
    columns.results.find((result) => result.id === id)?.heading ?? id;
  const moved = (id: string, by: number): readonly string[] => {
    const at = shown.indexOf(id);
    const without = shown.filter((text) => text !== id);
    return without.toSpliced(Math.max(0, at + by), 0, id);
  };
  return html`<div
    class="bar results"
    role="group"
    aria-label=${words.results}
    @keydown=${(event: KeyboardEvent) => {
      if (event.key === 'Escape') close();
    }}
  >
    ${[...shown, ...rest].map((id) => {
      const at = shown.indexOf(id);
      return html`<span class="one">
        <label class="check"
          ><input
            type="checkbox"
            .checked=${at >= 0}
            @change=${() => choose(at >= 0 ? shown.filter((text) => text !== id) : [...shown, id])}
          />
          ${heading(id)}</label
        >
        ${
          at < 0
            ? ''
            : html`<button
                  type="button"
                  class="plain"
                  ?disabled=${at === 0}
                  aria-label=${words.resultEarlier(heading(id))}
                  @click=${() => choose(moved(id, -1))}
                >
                  ◂</button
                ><button
                  type="button"
                  class="plain"
                  ?disabled=${at === shown.length - 1}
                  aria-label=${words.resultLater(heading(id))}
                  @click=${() => choose(moved(id, 1))}
                >
                  ▸
                </button>`
        }
      </span>`;
    })}
    <button type="button" class="plain close" @click=${close}>${words.close}</button>
  </div>`;
}
