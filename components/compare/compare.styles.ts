import { css } from 'lit';

export const styles = css`
  :host {
    container-type: inline-size;
  }
  .empty {
    padding: 0.75rem;
    max-width: 44rem;
  }
  h2,
  h3 {
    padding: 0.75rem 0.75rem 0.25rem;
    font-size: var(--_text);
    font-weight: 650;
  }
  h2 {
    font-size: var(--_head);
  }
  tbody th {
    color: var(--_ink);
    font-weight: 500;
  }
  td .quiet,
  th .quiet {
    display: block;
    font-size: var(--_small);
    font-weight: 400;
  }
  .keep,
  .mark {
    white-space: nowrap;
  }
  .mark {
    display: inline-flex;
    gap: 0.375rem;
    align-items: center;
    font-weight: 600;
  }
  .mark svg {
    flex: none;
    stroke-width: 1.5;
  }
  .better {
    color: var(--_good);
  }
  .better path {
    fill: var(--_good);
    stroke: var(--_good);
  }
  .worse {
    color: var(--_bad);
  }
  .worse path {
    fill: none;
    stroke: var(--_bad);
  }
  .even {
    color: var(--_quiet);
    font-weight: 400;
  }
  .even path {
    fill: none;
    stroke: var(--_quiet);
  }
  .unverified {
    display: block;
    color: var(--_bad);
    font-weight: 600;
  }
  .note {
    padding: 0.25rem 0.75rem;
  }
  th:first-child,
  td:first-child {
    padding-inline-start: 0.75rem;
  }
  .moves {
    border-top: 1px solid var(--_rule);
  }
  .moves li {
    display: grid;
    grid-template-columns: minmax(0, 4fr) minmax(0, 4fr) minmax(0, 4fr) minmax(0, 2fr);
    gap: 0.125rem 0.75rem;
    padding: 0.375rem 0.75rem;
    border-bottom: 1px solid var(--_hair);
  }
  .moves .what {
    display: block;
    color: var(--_quiet);
  }
  .moves .what.dropped {
    color: var(--_bad);
    font-weight: 600;
  }
  .moves .what.placed {
    color: var(--_good);
    font-weight: 600;
  }
  .moves .label {
    display: block;
    color: var(--_quiet);
    font-size: var(--_small);
  }
  @container (max-width: 46rem) {
    .moves li {
      grid-template-columns: minmax(0, 1fr) minmax(0, 1fr);
    }
    .moves .activity {
      grid-column: 1 / -1;
    }
  }
  @container (max-width: 32rem) {
    .keep,
    .mark {
      white-space: normal;
    }
    .mark {
      align-items: start;
    }
    .mark svg {
      margin-top: 0.1875rem;
    }
    table :is(th, td) {
      padding-inline: 0.25rem;
    }
    table :is(th, td):first-child {
      padding-inline-start: 0.75rem;
    }
  }
  @media (forced-colors: active) {
    .mark path {
      stroke: CanvasText;
    }
    .better path {
      fill: CanvasText;
    }
  }
`;
