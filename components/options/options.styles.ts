import { css } from 'lit';
import { fieldStyles } from '../shared/fields/field.styles.js';
import { panelStyles } from '../shared/panel.styles.js';

const layout = css`
  form {
    display: flex;
    flex-wrap: wrap;
    align-items: end;
    gap: 0.5rem 1rem;
    margin-top: 0.5rem;
  }
  label {
    display: grid;
    gap: 0.125rem;
    color: var(--_quiet);
    font-size: var(--_small);
  }
  :is(input, select) {
    font-size: var(--_text);
  }
  input {
    width: 6rem;
    text-align: end;
  }
  .own {
    margin-top: 0.5rem;
  }
  .own summary {
    width: fit-content;
    min-height: var(--_control);
    padding-block: 0.25rem;
    color: var(--_act);
    cursor: pointer;
    text-decoration: underline;
    text-decoration-thickness: 1px;
    text-underline-offset: 0.2em;
  }
  .own-list li {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 0.25rem 0.75rem;
    padding-block: 0.25rem;
    border-bottom: 1px solid var(--_hair);
    overflow-wrap: anywhere;
  }
  .own-list .remove {
    margin-inline-start: auto;
  }
  .own-form label.long input {
    width: 14rem;
    max-width: 100%;
    text-align: start;
  }
  .own-form select {
    max-width: min(100%, 18rem);
  }
  .own-form .refused {
    flex-basis: 100%;
    font-weight: 600;
  }
  .own-form .refused:empty {
    display: none;
  }
  .refused {
    color: var(--_bad);
  }
  .turns li {
    max-width: 60rem;
    padding: 0.375rem 0;
    border-top: 1px solid var(--_hair);
  }
  .options > li {
    display: grid;
    grid-template-columns: minmax(0, 1fr);
    gap: 0.25rem 1rem;
    padding: 0.625rem 0.75rem;
    border-block-start: 1px solid var(--_hair);
    border-inline-start: 4px solid transparent;
  }
  .options > li.cheapest {
    border-inline-start-color: var(--_good);
    background: var(--_raised);
  }
  @media (forced-colors: active) {
    .options > li:not(.cheapest) {
      border-inline-start-color: Canvas;
    }
  }
  .tag {
    padding: 0 0.375rem;
    border: 1px solid currentcolor;
    border-radius: var(--_radius);
    font-size: var(--_small);
    font-weight: 600;
  }
  .cheapest .tag {
    color: var(--_good);
  }
  .figures {
    display: flex;
    flex-wrap: wrap;
    gap: 0.25rem 1.25rem;
  }
  dt {
    color: var(--_quiet);
    font-size: var(--_small);
  }
  dd strong {
    font-size: var(--_lead);
    font-weight: 650;
  }
  .verdict.cheaper {
    color: var(--_good);
  }
  details {
    grid-column: 1 / -1;
  }
  details > * + * {
    margin-top: 0.375rem;
  }
  .formula {
    display: block;
    color: var(--_quiet);
    font-size: var(--_small);
    font-weight: 400;
    overflow-wrap: anywhere;
  }
  .told {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 0.25rem 0.75rem;
    margin-bottom: 0.75rem;
  }
  .compared {
    display: grid;
    grid-template-columns: minmax(0, 1fr);
    gap: 1rem 2rem;
    align-items: start;
  }
  .options {
    border-block-end: 1px solid var(--_hair);
  }
  .stop-chart {
    max-width: 40rem;
  }
  .stop-table thead th {
    vertical-align: bottom;
    white-space: normal;
  }
  .stop-table td:last-child {
    min-width: 11rem;
  }
  .parts th:first-child {
    width: 100%;
  }
  svg.bar + .figures {
    margin-block-start: 0.25rem;
  }
  tr.best :is(th, td) {
    background: var(--_act-wash);
    color: var(--_ink);
  }
  @container (min-width: 46rem) {
    .options > li {
      grid-template-columns: minmax(11rem, 1fr) minmax(0, 3fr);
    }
  }
  @container (min-width: 64rem) {
    .compared {
      grid-template-columns: repeat(2, minmax(0, 1fr));
    }
    .options > li {
      grid-template-columns: minmax(9rem, 1fr) minmax(0, 3fr);
    }
  }
  @media print {
    form,
    .own,
    details:not([open]),
    button {
      display: none;
    }
    .compared {
      display: block;
    }
    .options > li,
    tr {
      break-inside: avoid;
    }
  }
`;

export const styles = [panelStyles, fieldStyles, layout];
