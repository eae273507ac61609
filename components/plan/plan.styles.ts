import { css } from 'lit';

export const styles = css`
  :host {
    container-type: inline-size;
  }
  .certificate {
    display: flex;
    flex-wrap: wrap;
    gap: 0.125rem 1.5rem;
    align-items: baseline;
    padding: 0.5rem 0.75rem;
    border-bottom: 1px solid var(--_rule);
  }
  .certificate strong {
    font-size: var(--_lead);
  }
  h2 {
    padding: 0.75rem 0.75rem 0.25rem;
    font-size: var(--_text);
    font-weight: 650;
  }
  .unverified {
    padding: 0.5rem 0.75rem;
    background: var(--_bad-wash);
    color: var(--_bad);
    font-weight: 600;
  }
  .window {
    display: grid;
    grid-template-columns: 15.5rem minmax(0, 1fr);
    column-gap: 0.75rem;
    padding: 0.25rem 0.75rem;
    border-bottom: 1px solid var(--_hair);
  }
  .window .name {
    line-height: 1.25;
  }
  .shares {
    max-width: 16rem;
    color: var(--_quiet);
    font-size: var(--_small);
    font-weight: 400;
    white-space: normal;
  }
  .shares summary {
    cursor: pointer;
  }
  .window .quiet {
    font-size: var(--_small);
  }
  .ground-line {
    opacity: 0.75;
  }
  .work {
    cursor: pointer;
    outline-offset: 1px;
  }
  .work rect {
    fill: var(--_raised);
    stroke: var(--_ink);
    stroke-width: 1.25;
  }
  .work.critical rect.edge-mark {
    fill: var(--_ink);
  }
  .work:hover rect.body,
  .work.chosen rect.body {
    fill: var(--_act-wash);
    stroke: var(--_act);
    stroke-width: 2;
  }
  .work.dragged {
    opacity: 0.5;
  }
  .window.drop {
    outline: 2px solid var(--_act);
    outline-offset: -2px;
    background: var(--_act-wash);
  }
  .work text {
    font-weight: 600;
  }
  .scroll :is(th, td) {
    white-space: nowrap;
  }
  tbody th {
    color: var(--_ink);
    font-weight: 500;
  }
  .float {
    width: 11.75rem;
  }
  th.float {
    font-weight: 400;
    font-size: var(--_small);
  }
  th.float span:last-child {
    float: inline-end;
  }
  .float svg {
    margin-top: 0.125rem;
  }
  .axis {
    stroke: var(--_hair);
  }
  .due {
    stroke: var(--_ink);
    stroke-width: 2;
  }
  .held {
    fill: var(--_usable);
  }
  .lost {
    fill: none;
    stroke: var(--_bad);
    stroke-width: 1.5;
  }
  th:first-child,
  td:first-child {
    padding-inline-start: 0.75rem;
  }
  .met {
    color: var(--_good);
    font-weight: 600;
    white-space: nowrap;
  }
  .missed {
    color: var(--_bad);
    font-weight: 600;
    white-space: nowrap;
  }
  .unplaced {
    padding-inline: 0.75rem;
  }
  .unplaced li {
    padding-block: 0.25rem;
    border-bottom: 1px solid var(--_hair);
  }
  @media print {
    :host {
      page: possession-plan;
      container-type: normal;
    }
    .sheet {
      display: table;
      width: 100%;
    }
    .sheet .repeat {
      display: table-header-group;
    }
    .sheet > div {
      display: table-row-group;
    }
    .window {
      break-inside: avoid;
    }
    .times {
      columns: 3;
      font-size: 8pt;
    }
    .shares::details-content {
      content-visibility: visible;
      block-size: auto;
    }
    .held {
      fill: #000;
    }
    .lost {
      stroke: #000;
    }
  }
  @container (max-width: 46rem) {
    .window {
      grid-template-columns: minmax(0, 1fr);
    }
  }
  @media (forced-colors: active) {
    .work rect {
      fill: Canvas;
      stroke: CanvasText;
    }
    .work text,
    .held,
    .work.critical rect.edge-mark {
      fill: CanvasText;
    }
    .work.chosen rect.body {
      stroke: Highlight;
    }
    .lost,
    .due,
    .axis {
      stroke: CanvasText;
    }
  }
`;
