import { css } from 'lit';

/** How what is typed or chosen looks, and how it looks while it cannot be read. */
export const fieldStyles = css`
  :is(input, select, textarea) {
    min-height: var(--_control);
    max-width: 100%;
    padding: 0.125rem 0.5rem;
    border: 1px solid var(--_rule);
    border-radius: var(--_radius);
    background: var(--_raised);
    color: var(--_ink);
    font: inherit;
  }
  [aria-invalid='true'] {
    border: 2px solid var(--_bad);
    background: var(--_bad-wash);
  }
  @media (forced-colors: active) {
    :is(input, select, textarea) {
      border-color: CanvasText;
    }
    [aria-invalid='true'] {
      border-style: double;
      border-width: 4px;
    }
  }
`;
