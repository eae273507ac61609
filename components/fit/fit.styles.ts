import { css } from 'lit';
import { cellStyles } from './cell.styles.js';

const map = css`
  :host {
    display: flex;
    flex-direction: column;
    min-height: 0;
    /* Higher than the screen, its headings would scroll away. */
    max-block-size: 100vh;
    max-block-size: 100dvh;
  }
  .bar {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 0.25rem 0.75rem;
    padding: 0.5rem 0.75rem 0;
    color: var(--_quiet);
  }
  @media print {
    .bar {
      display: none;
    }
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
    overscroll-behavior: contain;
  }
  .map table,
  .map :is(thead, tbody, tr) {
    display: block;
  }
  .map table {
    position: relative;
    width: var(--wide);
  }
  .map :is(th, td) {
    overflow: hidden;
    padding: 0.25rem 0.5rem;
    border: 0 solid var(--_hair);
    border-block-end-width: 1px;
    border-inline-end-width: 1px;
    line-height: 1.25;
  }
  .map thead {
    position: sticky;
    inset-block-start: 0;
    z-index: 2;
    height: var(--head);
    background: var(--_raised);
  }
  .map thead tr {
    position: relative;
    height: 100%;
  }
  .map thead th {
    display: flex;
    flex-direction: column;
    justify-content: end;
    position: absolute;
    inset-block: 0;
    width: var(--column);
    border-block-end-color: var(--_rule);
    white-space: nowrap;
    font-weight: 400;
    font-size: var(--_small);
  }
  .map thead br {
    display: none;
  }
  th strong {
    color: var(--_ink);
    font-weight: 650;
  }
  thead th strong {
    display: block;
    overflow: hidden;
    font-size: var(--_text);
    text-overflow: ellipsis;
  }
  thead th.withdrawn strong {
    text-decoration: line-through;
  }
  .map :is(tbody th, .corner) {
    position: sticky;
    inset-inline-start: 0;
    z-index: 1;
    width: var(--names);
    height: 100%;
    background: var(--_raised);
    border-inline-end-color: var(--_rule);
  }
  .map tbody {
    position: relative;
    height: var(--high);
  }
  .map tbody tr {
    position: absolute;
    inset-inline: 0;
    height: var(--row);
    contain: layout size style;
  }
  .map tbody th {
    display: flex;
    flex-direction: column;
    justify-content: center;
    color: var(--_ink);
    font-weight: 400;
  }
  .map tbody th strong,
  .map tbody th .quiet {
    display: -webkit-box;
    -webkit-box-orient: vertical;
    -webkit-line-clamp: 2;
    overflow: hidden;
    overflow-wrap: anywhere;
  }
  th .quiet {
    display: block;
    font-size: var(--_small);
  }
  .map tbody th.within {
    box-shadow: inset 3px 0 0 var(--_act);
  }
  .map tbody th.within:dir(rtl) {
    box-shadow: inset -3px 0 0 var(--_act);
  }
  .map thead th.within {
    box-shadow: inset 0 -3px 0 var(--_act);
  }
  .map td {
    display: flex;
    flex-direction: column;
    justify-content: center;
    position: absolute;
    inset-block: 0;
    width: var(--column);
    scroll-margin-block-start: var(--head);
    scroll-margin-inline-start: var(--names);
    cursor: pointer;
  }
  .good {
    color: var(--_good);
  }
  .bad {
    color: var(--_bad);
  }
  @media print {
    :host {
      page: possession-plan;
      display: block;
      max-block-size: none;
    }
    .left-out {
      margin-bottom: 2mm;
      font-weight: 650;
    }
    .sheet {
      width: auto;
      margin-bottom: 4mm;
      table-layout: fixed;
    }
    .sheet :is(th, td) {
      width: 6.25rem;
      padding: 0.125rem 0.3125rem;
      border: 0.5pt solid var(--_hair);
      line-height: 1.2;
      vertical-align: middle;
    }
    .sheet th .quiet {
      font-weight: 400;
    }
    .sheet th:first-child {
      width: 9.25rem;
    }
    .sheet thead th {
      border-block-end: 1pt solid var(--_rule);
      font-weight: 400;
      vertical-align: bottom;
    }
    /* Colour does not come to paper: a near miss has a frame of its own. */
    .sheet td.near {
      border: 1.5pt solid var(--_rule);
    }
    .sheet td.fits .amount {
      font-weight: 700;
    }
  }
`;

export const styles = [map, cellStyles];
