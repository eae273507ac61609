import { css } from 'lit';

export const styles = css`
  :host {
    display: flex;
    flex-direction: column;
    min-height: 0;
  }
  .key {
    display: flex;
    flex-wrap: wrap;
    gap: 0.25rem 1.25rem;
    padding: 0.5rem 0.75rem;
    color: var(--_quiet);
    font-size: var(--_small);
  }
  .key li {
    display: flex;
    align-items: center;
    gap: 0.375rem;
  }
  .map {
    overflow: auto;
    min-height: 0;
    outline-offset: -2px;
  }
  table {
    border-collapse: separate;
    border-spacing: 0;
    width: auto;
    min-width: 100%;
  }
  th,
  td {
    padding: 0.25rem 0.5rem;
    border-right: 1px solid var(--_hair);
    vertical-align: middle;
  }
  thead th {
    position: sticky;
    top: 0;
    z-index: 1;
    border-bottom: 1px solid var(--_rule);
    background: var(--_raised);
    line-height: 1.25;
    vertical-align: bottom;
    white-space: nowrap;
    font-weight: 400;
    font-size: var(--_small);
  }
  thead th strong {
    display: block;
    color: var(--_ink);
    font-size: var(--_text);
    font-weight: 650;
  }
  thead th.withdrawn strong {
    text-decoration: line-through;
  }
  tbody th,
  thead th:first-child {
    position: sticky;
    inset-inline-start: 0;
    z-index: 1;
    width: 11rem;
    min-width: 11rem;
    background: var(--_raised);
    border-right: 1px solid var(--_rule);
  }
  thead th:first-child {
    z-index: 2;
  }
  tbody th {
    color: var(--_ink);
    font-weight: 400;
    line-height: 1.25;
  }
  tbody th strong {
    font-weight: 650;
  }
  tbody th .quiet {
    display: block;
    font-size: var(--_small);
  }
  td {
    min-width: 5.25rem;
    height: 2.875rem;
    line-height: 1.2;
    cursor: pointer;
    white-space: nowrap;
  }
  td .amount {
    display: flex;
    align-items: center;
    gap: 0.3125rem;
    font-size: var(--_text);
    font-weight: 600;
  }
  td .word {
    font-size: var(--_small);
  }
  td.fits {
    background: var(--_good-wash);
  }
  td.fits :is(.amount, .word) {
    color: var(--_good);
  }
  td.near {
    background: var(--_bad-wash);
  }
  td.short :is(.amount, .word) {
    color: var(--_bad);
  }
  td.never {
    color: var(--_quiet);
  }
  td.never {
    white-space: normal;
  }
  td.short .amount {
    font-weight: 500;
  }
  td.near .amount {
    font-weight: 650;
  }
  td.never .amount {
    font-size: var(--_small);
    font-weight: 400;
  }
  td:hover {
    box-shadow: inset 0 0 0 1px var(--_act);
  }
  td[aria-selected='true'] {
    box-shadow: inset 0 0 0 2px var(--_act);
  }
  td:focus-visible {
    outline: 2px solid var(--_focus);
    outline-offset: -4px;
  }
  .mark {
    flex: none;
    fill: currentColor;
    stroke: currentColor;
  }
  .good {
    color: var(--_good);
  }
  .bad {
    color: var(--_bad);
  }
  @container desk (max-width: 46rem) {
    tbody th,
    thead th:first-child {
      width: 7.5rem;
      min-width: 7.5rem;
      max-width: 7.5rem;
    }
    td {
      min-width: 4.75rem;
    }
  }
  @media (max-width: 46rem) {
    tbody th,
    thead th:first-child {
      width: 7.5rem;
      min-width: 7.5rem;
      max-width: 7.5rem;
      overflow-wrap: anywhere;
    }
  }
  @media (forced-colors: active) {
    td.short {
      border: 1px dashed CanvasText;
    }
    td[aria-selected='true'] {
      outline: 2px solid Highlight;
      outline-offset: -2px;
    }
  }
`;
