import { css } from 'lit';

export const styles = css`
  .troubles {
    margin-block-end: 0.75rem;
    padding: 0.5rem 0.75rem;
    border-inline-start: 4px solid var(--_bad);
    background: var(--_raised);
    overflow-wrap: anywhere;
  }
  li {
    margin-block-start: 0.25rem;
  }
`;
