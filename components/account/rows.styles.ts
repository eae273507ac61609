import { css } from 'lit';

/** The rows of the account and their calculation; cards when the element is narrow. */
export const rowStyles = css`
  .account-rows {
    margin-top: 0.375rem;
    table-layout: fixed;
  }
  .account-rows th[scope='row'] {
    text-align: start;
    font-weight: 400;
    overflow-wrap: anywhere;
  }
  .account-rows thead th:nth-child(2) {
    width: 11rem;
  }
  .account-rows thead th:nth-child(3) {
    width: 15rem;
  }
  .account-rows thead th:nth-child(4) {
    width: 7rem;
  }
  .account-rows :is(.title, .formula, .small, .amount) {
    display: block;
  }
  .title {
    color: var(--_ink);
    font-weight: 600;
  }
  .formula {
    color: var(--_ink);
  }
  .small {
    color: var(--_quiet);
    font-size: var(--_small);
  }
  .amount {
    font-size: var(--_lead);
    font-weight: 600;
  }
  .beside .amount {
    color: var(--_quiet);
    font-weight: 400;
  }
  .share {
    display: inline-flex;
    flex-direction: column;
    align-items: end;
    margin-top: 0.25rem;
    white-space: nowrap;
  }
  .share .problem {
    white-space: normal;
  }
  .share input {
    width: 5rem;
    text-align: end;
  }
  .tag {
    display: inline-block;
    margin-top: 0.25rem;
    padding: 0 0.375rem;
    border: 1px solid currentcolor;
    border-radius: var(--_radius);
    font-size: var(--_small);
    font-weight: 600;
  }
  .tag.good {
    color: var(--_good);
  }
  .tag.open {
    border-style: dashed;
    color: var(--_warn);
  }
  .inputs {
    margin-block: 0.25rem;
    display: flex;
    flex-wrap: wrap;
    gap: 0.125rem 1rem;
  }
  .inputs dt {
    color: var(--_quiet);
    font-size: var(--_small);
  }
  .breakdowns {
    display: grid;
    grid-template-columns: minmax(0, 1fr);
  }
  .breakdowns th[scope='row'] {
    color: var(--_ink);
    font-weight: 400;
    overflow-wrap: anywhere;
  }
  .notes li {
    padding-inline-start: 0.625rem;
    border-inline-start: 3px solid var(--_warn);
  }
  .notes li + li {
    margin-top: 0.25rem;
  }
  .narrow {
    display: none;
  }

  @container (max-width: 53.99rem) {
    .narrow {
      display: block;
      color: var(--_quiet);
      font-size: var(--_small);
    }
    .cards thead {
      position: absolute;
      overflow: hidden;
      width: 1px;
      height: 1px;
      clip-path: inset(50%);
    }
    .cards,
    .cards tbody {
      display: block;
    }
    .cards tr {
      display: grid;
      grid-template-columns: 1fr 1fr auto;
      column-gap: 0.75rem;
      padding-block: 0.625rem;
      border-bottom: 1px solid var(--_rule);
    }
    .cards :is(td, th) {
      display: block;
      padding: 0.125rem 0;
      border: 0;
      text-align: start;
      white-space: normal;
    }
    .cards tbody th {
      grid-column: 1 / 3;
    }
    .cards td:nth-child(2) {
      grid-area: 2 / 1;
    }
    .cards td:nth-child(3) {
      grid-area: 2 / 2 / auto / -1;
    }
    .cards td.figure {
      grid-area: 1 / 3;
      text-align: end;
    }
  }
  @container (min-width: 46rem) {
    .breakdowns {
      grid-template-columns: repeat(2, minmax(0, 1fr));
    }
  }
  @media print {
    .tag {
      margin-inline-start: 0.25rem;
      white-space: nowrap;
    }
    .account-rows thead th:nth-child(2) {
      width: 26mm;
    }
    .account-rows thead th:nth-child(3) {
      width: 40mm;
    }
    .account-rows thead th:nth-child(4) {
      width: 24mm;
    }
    .breakdowns {
      grid-template-columns: 1fr 1fr;
    }
  }
`;
