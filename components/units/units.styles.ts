import { css } from 'lit';

export const styles = css`
  :host {
    container-type: inline-size;
  }
  .empty {
    padding: 0.75rem;
    max-width: 44rem;
  }
  .columns {
    display: grid;
    grid-template-columns: 15.5rem minmax(0, 1fr);
    gap: 0.25rem 1rem;
    padding: 0 0.75rem 0.75rem;
  }
  h2 {
    padding: 0.75rem 0.75rem 0.5rem;
    font-size: var(--_head);
    font-weight: 650;
  }
  h3 {
    padding-bottom: 0.25rem;
    font-size: var(--_lead);
    font-weight: 650;
  }
  .works button {
    display: grid;
    grid-template-columns: minmax(0, 1fr) auto;
    gap: 0 0.5rem;
    width: 100%;
    margin-bottom: 0.25rem;
    text-align: start;
  }
  .works button[aria-pressed='true'] {
    border-color: var(--_act);
    background: var(--_act-wash);
    box-shadow: inset 4px 0 0 var(--_act);
  }
  .works .count {
    white-space: nowrap;
  }
  .late {
    color: var(--_bad);
    font-weight: 600;
  }
  .held {
    color: var(--_good);
    font-weight: 600;
  }
  possession-chart {
    margin-block: 0.75rem;
    --possession-chart-height: 20rem;
  }
  tbody th {
    color: var(--_ink);
    font-weight: 500;
  }
  .scroll :is(th, td) {
    white-space: nowrap;
  }
  /* One column: the list scrolls by itself, so that the chart is not a screen away. */
  @container (max-width: 46rem) {
    .columns {
      grid-template-columns: minmax(0, 1fr);
    }
    .works {
      overflow: auto;
      max-height: 11rem;
      margin-bottom: 0.5rem;
      padding: 2px;
    }
  }
  @media print {
    .columns {
      grid-template-columns: minmax(0, 1fr);
    }
    .works {
      max-height: none;
      columns: 3;
      column-gap: 1.5rem;
    }
    .works button {
      min-height: 0;
      margin: 0;
      padding: 0.125rem 0;
      border: 0;
      box-shadow: none;
    }
    .columns > section {
      break-inside: avoid;
    }
    section > p button {
      display: none;
    }
  }
  @media (forced-colors: active) {
    .works button[aria-pressed='true'] {
      border-color: Highlight;
      outline: 2px solid Highlight;
      outline-offset: -2px;
    }
  }
`;
