import { css } from 'lit';

export const styles = css`
  .title {
    color: var(--_quiet);
    font-size: var(--_small);
    font-weight: 600;
  }
  .number {
    margin-block: 0.125rem 0.25rem;
    font-size: var(--_figure);
    font-weight: 500;
    line-height: 1.2;
    letter-spacing: -0.01em;
  }
  .number.good {
    color: var(--_good);
  }
  .number.bad {
    color: var(--_bad);
  }
  .sentence {
    max-width: 34rem;
    font-size: var(--_text);
    text-wrap: pretty;
  }
  h3 {
    margin-block: 0.875rem 0.25rem;
    color: var(--_quiet);
    font-size: var(--_small);
    font-weight: 600;
  }
  .rows {
    border-top: 1px solid var(--_rule);
  }
  .rows li {
    display: grid;
    grid-template-columns: 16px minmax(0, 1fr) auto;
    gap: 0 0.5rem;
    padding-block: 0.25rem;
    border-bottom: 1px solid var(--_hair);
  }
  .rows li.strong {
    font-weight: 600;
  }
  .rows svg {
    margin-top: 0.2rem;
  }
  .rows .label {
    grid-column: 2;
    overflow-wrap: anywhere;
  }
  .rows .figure {
    grid-column: 3;
  }
  .rows .note {
    grid-column: 2 / -1;
    color: var(--_quiet);
    font-size: var(--_small);
    font-weight: 400;
  }
  .rule {
    padding: 0.5rem 0.625rem;
    border-inline-start: 3px solid var(--_rule);
    background: var(--_sunk);
  }
  .rule strong {
    display: block;
  }
  .links {
    display: flex;
    flex-wrap: wrap;
    gap: 0.375rem 1rem;
  }
  .empty {
    color: var(--_quiet);
  }
`;
