import { css } from 'lit';

/** Heads of cost and the list of steps. */
export const tableStyles = css`
  .rows th[scope='row'] {
    font-weight: 400;
  }
  .rows :is(.title, .head, .formula, .source, .amount, .state) {
    display: block;
  }
  .rows .title {
    color: var(--_ink);
    font-weight: 600;
  }
  .rows .formula {
    color: var(--_ink);
    overflow-wrap: anywhere;
  }
  .rows :is(.head, .source, .state) {
    font-size: var(--_small);
  }
  .rows .source {
    overflow-wrap: anywhere;
  }
  .rows .amount {
    font-size: var(--_lead);
    font-weight: 600;
  }
  .rows .state {
    color: var(--_quiet);
  }
  .rows .beside .amount,
  .rows td.beside {
    color: var(--_quiet);
    font-weight: 400;
  }
  .rows .beside .state::before {
    content: '(';
  }
  .rows .beside .state::after {
    content: ')';
  }
  .rows .sum :is(th, td) {
    border-top: 2px solid var(--_ink);
    color: var(--_ink);
    font-size: var(--_lead);
    font-weight: 650;
  }
  .pending {
    margin-bottom: 0.25rem;
    padding: 0.25rem 0.625rem;
    border-inline-start: 3px solid var(--_warn);
  }
  [aria-busy='true'] .rows .amount,
  [aria-busy='true'] .rows .sum td {
    color: var(--_quiet);
  }

  .steps td:first-child {
    width: 2rem;
    padding-inline-end: 0;
  }
  .steps .what {
    width: 100%;
    overflow-wrap: break-word;
  }
  .steps .what div::first-letter {
    text-transform: uppercase;
  }
  .steps th.figure {
    white-space: normal;
  }
  .disc {
    display: inline-block;
    min-width: 1.25rem;
    padding: 0 0.25rem;
    border: 1px solid var(--_ink);
    border-radius: 1rem;
    font-size: var(--_small);
    line-height: 1.125rem;
    text-align: center;
  }
  .reached .disc {
    background: var(--_ink);
    color: var(--_paper);
  }
`;
