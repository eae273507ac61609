import { css } from 'lit';

/** The sheet is as wide as A4 within its margins, so that the screen shows what the paper will. */
export const styles = css`
  :host {
    container-type: inline-size;
  }
  .bar {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 0.5rem;
    padding: 0.5rem 0.75rem;
    border-bottom: 1px solid var(--_hair);
  }
  [name='after']::slotted(*) {
    margin-inline-start: auto;
  }
  article {
    max-width: 62rem;
    padding: 0.75rem;
  }
  h2 {
    margin-bottom: 0.5rem;
    font-size: var(--_head);
  }
  h3 {
    margin: 1rem 0 0.25rem;
    font-size: var(--_lead);
  }
  dl div {
    display: grid;
    grid-template-columns: minmax(8rem, 13rem) minmax(0, 1fr);
    gap: 0.25rem 1rem;
    padding: 0.125rem 0;
    border-bottom: 1px solid var(--_hair);
  }
  dt {
    color: var(--_quiet);
  }
  dd {
    overflow-wrap: anywhere;
  }
  td,
  th[scope='row'] {
    overflow-wrap: break-word;
  }
  td:not(.figure) {
    min-width: 5rem;
  }
  .figure {
    text-align: end;
    white-space: nowrap;
  }
  thead .figure {
    white-space: normal;
  }
  @container (max-width: 30rem) {
    dl div {
      grid-template-columns: minmax(0, 1fr);
      gap: 0;
    }
  }
  th[scope='row'] {
    min-width: 8rem;
    color: var(--_ink);
    font-weight: 400;
    text-align: start;
  }
  th[scope='col']:not(.figure) {
    text-align: start;
  }
  thead th {
    white-space: normal;
  }
  tbody tr:last-child :is(th, td) {
    border-bottom: 2px solid var(--_rule);
  }
  li {
    padding-inline-start: 0.625rem;
    border-inline-start: 3px solid var(--_warn);
  }
  li + li {
    margin-top: 0.25rem;
  }
  @media print {
    :host {
      page: possession-report;
    }
    article {
      max-width: none;
      padding: 0;
    }
    table {
      font-size: 7.5pt;
      line-height: 1.25;
    }
    .unbroken {
      white-space: nowrap;
    }
    h2 {
      margin-bottom: 0.25rem;
    }
    h3 {
      margin-top: 0.5rem;
    }
    dl {
      font-size: 8.5pt;
      line-height: 1.25;
    }
    :is(td, th) {
      padding-block: 0.75pt;
    }
    /* On paper the longest column gets the room: the work of a window, a reason. */
    :is(td:not(.figure), th[scope='row']) {
      min-width: 0;
    }
  }
`;
