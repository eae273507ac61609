import { css, html, type TemplateResult } from 'lit';

/** The cautions that go with every figure someone could act on, the weightiest first. */
export function cautionList(label: string, lines: readonly string[]): TemplateResult {
  return html`<ul part="cautions" class="cautions" aria-label=${label}>
    ${lines.map((line, index) => html`<li>${index === 0 ? html`<strong>${line}</strong>` : line}</li>`)}
  </ul>`;
}

export const cautionStyles = css`
  .cautions {
    display: flex;
    flex-wrap: wrap;
    gap: 0.125rem 1.25rem;
    padding: 0.5rem 0.75rem;
    border-block: 1px solid var(--_rule);
    background: var(--_sunk);
    font-size: var(--_small);
  }
  .cautions strong {
    font-weight: 650;
  }
`;
