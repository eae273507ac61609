import { css } from 'lit';

/** Headings, summaries and tables of both elements. */
export const sharedStyles = css`
  :host {
    display: block;
    padding: 0.75rem;
  }
  h2 {
    font-size: var(--_head);
    font-weight: 650;
  }
  h3 {
    padding-block: 0.5rem 0.25rem;
    font-size: var(--_text);
    font-weight: 650;
  }
  h3 .quiet {
    font-weight: 400;
  }
  .summary {
    padding-block: 0.5rem 0.25rem;
    font-size: var(--_lead);
  }
  .summary.wrong {
    padding-inline-start: 0.625rem;
    border-inline-start: 4px solid var(--_bad);
  }
  td.wrong {
    color: var(--_bad);
    font-weight: 600;
  }
  .told {
    max-width: 52rem;
    padding-bottom: 0.5rem;
  }
  .frame {
    min-width: 0;
    overflow-x: clip;
  }
  svg {
    display: block;
  }
  text {
    font-size: var(--_small);
    fill: var(--_ink);
  }
  text.tick {
    fill: var(--_quiet);
  }
  summary {
    width: fit-content;
    padding-block: 0.375rem;
    color: var(--_act);
    cursor: pointer;
  }
  tbody th {
    color: var(--_ink);
    font-weight: 500;
  }
  .scroll :is(th, td) {
    white-space: nowrap;
  }
`;

export const styles = [
  sharedStyles,
  css`
    .bar {
      display: flex;
      flex-wrap: wrap;
      gap: 0.375rem 1rem;
      padding-block: 0.5rem 0;
    }
    .bar label {
      display: inline-flex;
      align-items: center;
      gap: 0.5rem;
      color: var(--_quiet);
    }
    .bar select {
      min-height: var(--_control);
      padding: 0.25rem 0.5rem;
      font: inherit;
    }
    .top {
      position: sticky;
      inset-block-start: 0;
      z-index: 1;
      background: var(--_raised);
      border-block-end: 1px solid var(--_rule);
    }
    .mark {
      stroke: var(--_rule);
    }
    .closed {
      fill: none;
      stroke: var(--_rule);
    }
    .closed:is(.requested, .offered) {
      stroke-dasharray: 5 3;
    }
    .hour {
      stroke: var(--_hair);
    }
    .piece {
      cursor: pointer;
    }
    .box {
      fill: var(--_usable);
      stroke: var(--_paper);
    }
    .piece.units .box {
      fill: var(--_good-wash);
      stroke: var(--_usable);
    }
    .piece.anywhere .box {
      fill: none;
      stroke: var(--_usable);
      stroke-dasharray: 2 2;
    }
    .piece.chosen .box {
      stroke: var(--_act);
      stroke-width: 2.5;
    }
    .along {
      stroke: var(--_usable);
      stroke-width: 2.5;
    }
    .name {
      fill: var(--_on-usable);
      font-weight: 600;
      pointer-events: none;
    }
    .piece:is(.units, .anywhere) .name,
    .name.out {
      fill: var(--_ink);
      paint-order: stroke;
      stroke: var(--_raised);
      stroke-width: 3px;
    }
    .meets {
      fill: url(#meets);
      stroke: var(--_warn);
      stroke-width: 1.5;
      pointer-events: none;
    }
    .meets.alone {
      stroke: var(--_bad);
      stroke-width: 2.5;
    }
    .hatch {
      stroke: var(--_warn);
    }
    @media print {
      .top {
        position: static;
      }
      .piece .box,
      .piece.units .box {
        stroke: #000;
      }
      .along {
        stroke: #000;
      }
      .hour {
        stroke: #bbb;
      }
    }
    @media (forced-colors: active) {
      .box,
      .closed,
      .meets,
      .along,
      .mark {
        stroke: CanvasText;
        forced-color-adjust: none;
      }
      .piece .box,
      .piece:is(.units, .anywhere) .box {
        fill: Canvas;
        stroke: CanvasText;
      }
      .piece.chosen .box {
        stroke: Highlight;
      }
      .piece .name {
        fill: CanvasText;
        stroke: Canvas;
        stroke-width: 3px;
        paint-order: stroke;
        forced-color-adjust: none;
      }
    }
  `,
];
