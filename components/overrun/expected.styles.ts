import { css } from 'lit';

/** What the overrun costs on average. */
export const expectedStyles = css`
  .expected .mean {
    flex-basis: 100%;
  }
  .expected dl {
    display: flex;
    flex-wrap: wrap;
    gap: 0.5rem 1.5rem;
    margin-top: 0.375rem;
  }
  .expected dt,
  .expected dd .quiet {
    color: var(--_quiet);
    font-size: var(--_small);
  }
  .expected dd strong,
  .expected dd .quiet {
    display: block;
  }
  .expected dd strong {
    font-size: var(--_head);
    font-weight: 650;
  }
  .expected .mean dd strong {
    font-size: var(--_figure);
    line-height: 1.2;
  }
`;
