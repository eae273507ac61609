import { css } from 'lit';
import { headingStyles } from '../shared/panel.styles.js';
import { expectedStyles } from './expected.styles.js';
import { minutesStyles } from './minutes.styles.js';
import { tableStyles } from './tables.styles.js';

const layout = css`
  header {
    display: grid;
    grid-template-columns: minmax(0, 1fr);
    gap: 0.75rem 2rem;
  }
  h3 {
    margin-bottom: 0.25rem;
  }
  h4 {
    margin: 0.75rem 0 0.25rem;
    font-size: var(--_text);
    font-weight: 650;
  }
  .name p {
    overflow-wrap: anywhere;
  }

  .total {
    display: flex;
    flex-direction: column;
    align-self: end;
  }
  .total .label {
    color: var(--_quiet);
  }
  .total .sum {
    font-size: var(--_figure);
    font-weight: 650;
    line-height: 1.15;
    letter-spacing: -0.01em;
    overflow-wrap: anywhere;
  }
  button.ask {
    min-height: 1.5rem;
    color: inherit;
    font-weight: inherit;
    letter-spacing: inherit;
    text-align: inherit;
    text-decoration-style: dotted;
    text-decoration-color: var(--_act);
  }
  .currency {
    color: var(--_quiet);
    font-size: var(--_head);
    font-weight: 400;
    letter-spacing: 0;
  }

  .columns {
    display: grid;
    grid-template-columns: minmax(0, 1fr);
    gap: 1.5rem 2rem;
    padding: 0.75rem;
  }
  .column {
    display: contents;
  }
  .picture {
    order: 1;
  }
  .side {
    order: 0;
  }
  .steps-list {
    order: 2;
  }
  .heads {
    order: 3;
  }
  .expected {
    order: 4;
  }
  .steps-list {
    container-type: inline-size;
  }
  .list {
    max-height: 25rem;
  }
  .list thead th {
    position: sticky;
    inset-block-start: 0;
    background: var(--_paper);
  }
  .side form {
    display: flex;
    flex-wrap: wrap;
    align-items: baseline;
    gap: 0.25rem 0.75rem;
    margin-bottom: 0.375rem;
  }
  .side label {
    color: var(--_quiet);
  }
  .side input {
    width: 12rem;
    max-width: 100%;
    min-height: var(--_control);
    padding: 0.125rem 0.5rem;
    border: 1px solid var(--_rule);
    border-radius: var(--_radius);
    background: var(--_raised);
  }
  .compare th[scope='row'] {
    color: var(--_ink);
    font-weight: 400;
  }
  .compare :is(th, td).figure {
    min-width: 6.5rem;
  }
  .compare :is(.quiet, .gain) {
    display: block;
    font-size: var(--_small);
    font-weight: 400;
  }
  .compare .differs {
    border-inline-start: 3px solid var(--_warn);
  }
  .compare .gain {
    color: var(--_quiet);
  }
  .compare .sum :is(th, td) {
    border-top: 2px solid var(--_ink);
    color: var(--_ink);
    font-size: var(--_lead);
    font-weight: 650;
  }
  .compare .beside {
    color: var(--_quiet);
  }
  .on-site td .quiet {
    display: block;
    font-size: var(--_small);
  }
  .on-site .gone td {
    color: var(--_quiet);
  }
  .on-site select {
    margin-inline-start: 0.375rem;
    font: inherit;
  }
  .held,
  .key-dates,
  .on-site,
  .notes {
    padding: 0.75rem;
  }
  .held table {
    max-width: 48rem;
  }
  .notes li + li {
    margin-top: 0.25rem;
  }
  .notes li {
    padding-inline-start: 0.625rem;
    border-inline-start: 3px solid var(--_warn);
  }
  .note {
    margin-top: 0.25rem;
    color: var(--_quiet);
  }
  details {
    margin-top: 0.375rem;
  }
  summary {
    width: fit-content;
    color: var(--_act);
    cursor: pointer;
  }

  .when {
    white-space: nowrap;
  }
  .cancelled {
    color: var(--_bad);
    font-weight: 650;
  }

  @container (max-width: 29.99rem) {
    .trains :is(th, td) {
      padding-inline: 0.25rem;
    }
    .trains :is(.when, th.figure) {
      white-space: normal;
    }
    .steps .figure .quiet {
      display: block;
    }
    .steps :is(th, td) {
      padding-inline: 0.25rem;
    }
  }
  @container (min-width: 46rem) {
    header {
      grid-template-columns: minmax(11rem, 1fr) minmax(16rem, 1.4fr) auto;
    }
    .total {
      text-align: end;
    }
    .columns {
      grid-template-columns: repeat(2, minmax(0, 1fr));
    }
    .column {
      display: flex;
      flex-direction: column;
      gap: 1.5rem;
      min-width: 0;
    }
  }
  @media (forced-colors: active) {
    .disc,
    .reached .disc {
      forced-color-adjust: none;
      border-color: CanvasText;
      background: Canvas;
      color: CanvasText;
    }
    .reached .disc {
      background: CanvasText;
      color: Canvas;
    }
  }
  /* A chart on paper is drawn as wide as the sheet. */
  @media print {
    .columns {
      display: block;
    }
    .column > * + *,
    .column + .column {
      margin-top: 4mm;
    }
    .picture,
    .expected {
      break-inside: avoid;
    }
    .list {
      max-height: none;
    }
    .list thead th {
      position: static;
    }
    :is(.heads, .side) details.nothing::details-content {
      content-visibility: visible;
      block-size: auto;
    }
    details.nothing > summary {
      color: inherit;
      list-style: none;
    }
    .total .sum {
      font-size: 18pt;
    }
    header {
      grid-template-columns: minmax(0, 1fr) auto;
    }
    header,
    .columns,
    .held,
    .key-dates,
    .on-site,
    .notes {
      padding-inline: 0;
    }
  }
`;

export const styles = [headingStyles, tableStyles, minutesStyles, expectedStyles, layout];
