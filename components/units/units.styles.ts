import { css } from 'lit';

export const styles = css`
  :host {
    container-type: inline-size;
  }
  .empty {
    padding: 0.75rem;
    max-width: 44rem;
  }
  .columns {
    display: grid;
    grid-template-columns: 15.5rem minmax(0, 1fr);
    gap: 0.25rem 1rem;
    padding: 0 0.75rem 0.75rem;
  }
  h2 {
    padding: 0.75rem 0.75rem 0.5rem;
    font-size: var(--_head);
    font-weight: 650;
  }
  h3 {
    padding-bottom: 0.25rem;
    font-size: var(--_lead);
    font-weight: 650;
  }
  .choice button {
    display: grid;
    grid-template-columns: minmax(0, 1fr) auto;
    gap: 0 0.5rem;
    width: 100%;
    margin-bottom: 0.25rem;
    text-align: start;
  }
  .choice button[aria-pressed='true'] {
    border-color: var(--_act);
    background: var(--_act-wash);
    box-shadow: inset 4px 0 0 var(--_act);
  }
  .choice .count {
    white-space: nowrap;
  }
  .late {
    color: var(--_bad);
    font-weight: 600;
  }
  .held {
    color: var(--_good);
    font-weight: 600;
  }
  .frame {
    min-width: 0;
    margin-block: 0.5rem;
    overflow: hidden;
  }
  .grid {
    stroke: var(--_hair);
  }
  text.tick {
    fill: var(--_quiet);
  }
  .visit {
    fill: var(--_act-wash);
  }
  text.name {
    fill: var(--_act);
  }
  text.sum {
    font-weight: 600;
  }
  .target {
    stroke: var(--_good);
    stroke-width: 1.5;
    stroke-dasharray: 6 3;
  }
  text.target-text {
    fill: var(--_good);
    font-weight: 600;
  }
  .line {
    fill: none;
    stroke: var(--_ink);
    stroke-width: 2;
    stroke-linejoin: round;
  }
  .dot {
    fill: var(--_ink);
  }
  .due {
    stroke: var(--_ink);
    stroke-width: 2;
  }
  text.due-text {
    fill: var(--_ink);
    font-weight: 650;
  }
  .halo {
    paint-order: stroke;
    stroke: var(--_paper);
    stroke-width: 3px;
  }
  summary {
    padding-block: 0.375rem;
    cursor: pointer;
  }
  tbody th {
    color: var(--_ink);
    font-weight: 500;
  }
  .scroll :is(th, td) {
    white-space: nowrap;
  }
  @container (max-width: 46rem) {
    .columns {
      grid-template-columns: minmax(0, 1fr);
    }
  }
  @media print {
    .columns {
      grid-template-columns: minmax(0, 1fr);
    }
  }
  @media (forced-colors: active) {
    .choice button[aria-pressed='true'] {
      border-color: Highlight;
      outline: 2px solid Highlight;
      outline-offset: -2px;
    }
    .line,
    .due,
    .target {
      stroke: CanvasText;
    }
    .visit {
      fill: Canvas;
      stroke: CanvasText;
      stroke-width: 0.5;
    }
    .dot,
    text.due-text,
    text.target-text {
      fill: CanvasText;
    }
    .halo {
      stroke: Canvas;
    }
  }
`;
