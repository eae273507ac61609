import { css } from 'lit';

/** The tables below the picture, with shares and delays as bars. */
export const tableStyles = css`
  .tables {
    display: grid;
    grid-template-columns: repeat(auto-fit, minmax(min(100%, 25rem), 1fr));
    gap: 1.5rem 2rem;
    margin-top: 1.5rem;
  }
  .tables > * {
    min-width: 0;
  }
  .cut-offs {
    grid-column: 1 / -1;
  }
  tbody th {
    color: var(--_ink);
    font-weight: 400;
    overflow-wrap: anywhere;
  }
  thead .figure {
    white-space: normal;
  }
  thead td {
    border-bottom-color: var(--_rule);
  }
  thead th {
    border-bottom-color: var(--_rule);
    font-size: var(--_small);
    vertical-align: bottom;
  }
  tbody th[scope='row']:not(.figure) {
    min-width: 7rem;
  }
  .units table {
    width: auto;
  }
  .id {
    color: var(--_quiet);
  }
  .time strong {
    font-weight: 650;
  }
  td.short strong {
    color: var(--_bad);
  }
  tr.done :is(th, td, strong) {
    color: var(--_quiet);
    font-weight: 400;
  }
  tr.best > * {
    background: var(--_good-wash);
  }
  tr.best .quiet {
    color: var(--_ink);
  }
  .bars {
    width: 8.5rem;
    vertical-align: middle;
  }
  .share {
    width: 100%;
    max-width: 7.5rem;
  }
  .state {
    white-space: nowrap;
  }
  .track {
    stroke: var(--_hair);
  }
  .filled {
    fill: var(--_usable);
  }
  .aim {
    stroke: var(--_ink);
    stroke-width: 2;
  }
  @container (max-width: 46rem) {
    .tables th,
    .tables td {
      padding-inline: 0.25rem;
    }
    .cut-offs .time .quiet {
      display: block;
      white-space: nowrap;
    }
    .helps .bars {
      display: none;
    }
    .cut-offs thead th {
      min-width: 3.75rem;
    }
    .bars {
      width: 6rem;
    }
  }
  @media (forced-colors: active) {
    .filled {
      fill: CanvasText;
    }
    .aim {
      stroke: CanvasText;
    }
  }
`;
