import { css, html, nothing, type TemplateResult } from 'lit';

/** What is said of figures that nobody chose, and on the button that makes them the plan's own. */
export interface ExampleWords {
  readonly example: string;
  readonly take: string;
}

/** A line above figures that are an example, with a button to take them into the plan; nothing over the plan's own. */
export function exampleLine(
  isExample: boolean,
  words: ExampleWords,
  take: () => void,
): TemplateResult | typeof nothing {
  if (!isExample) return nothing;
  return html`<div class="example">
    <p>${words.example}</p>
    <button type="button" @click=${take}>${words.take}</button>
  </div>`;
}

export const exampleStyles = css`
  .example {
    display: flex;
    flex-wrap: wrap;
    gap: 0.375rem 1rem;
    align-items: center;
    margin-block: 0.5rem;
    padding: 0.375rem 0.625rem;
    border-inline-start: 4px solid var(--_warn);
    background: var(--_sunk);
  }
`;
