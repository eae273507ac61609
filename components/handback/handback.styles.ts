import { css } from 'lit';
import { endPictureStyles } from './end/end-picture.styles.js';
import { tableStyles } from './tables.styles.js';
import { windowListStyles } from './window-list.styles.js';

const layout = css`
  :host {
    container-type: inline-size;
  }
  .empty {
    padding: 0.75rem;
  }
  .screen > .quiet:not(.empty) {
    padding: 0.5rem 0.75rem;
  }
  .busy {
    display: flex;
    align-items: center;
    gap: 0.625rem;
    padding-inline: 0.75rem;
  }
  .busy:not(:empty):has(progress) {
    padding-block: 0.5rem;
  }
  article {
    padding: 0.75rem;
  }
  h2 {
    font-size: var(--_head);
    font-weight: 650;
    overflow-wrap: anywhere;
  }
  h3 {
    margin-bottom: 0.125rem;
    font-size: var(--_lead);
    font-weight: 650;
    overflow-wrap: anywhere;
  }
  .warned {
    margin-top: 0.375rem;
    padding: 0.375rem 0.625rem;
    border-inline-start: 3px solid var(--_bad);
    background: var(--_bad-wash);
  }
  .end {
    margin-top: 0.75rem;
  }
  .end-parts {
    display: grid;
    grid-template-columns: minmax(0, 1fr) 15rem;
    gap: 1.5rem;
    align-items: start;
    margin-top: 0.375rem;
  }
  .end-picture {
    min-width: 0;
  }
  .end-strip {
    margin-top: 1rem;
    overflow: hidden;
  }
  .bars-table {
    max-height: 20rem;
  }
  .figures th,
  .figures td {
    padding-block: 0.125rem;
  }
  .figures th {
    padding-inline-start: 0;
    font-weight: 400;
  }
  .figures td {
    padding-inline-end: 0;
  }
  summary {
    padding-block: 0.375rem;
    color: var(--_act);
    cursor: pointer;
    text-decoration: underline;
    text-decoration-thickness: 1px;
    text-underline-offset: 0.2em;
  }
  @container (max-width: 46rem) {
    .end-parts {
      grid-template-columns: minmax(0, 1fr);
    }
  }
`;

export const styles = [layout, windowListStyles, tableStyles, endPictureStyles];
