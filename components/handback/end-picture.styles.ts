import { css } from 'lit';

/** The end of the window: when it is handed back, in how many runs, against what is booked. */
export const endPictureStyles = css`
  .tick {
    stroke: var(--_hair);
  }
  text.soft {
    fill: var(--_quiet);
  }
  .floor,
  .needed {
    fill: none;
    stroke: var(--_rule);
  }
  .bar.on-time {
    fill: var(--_usable);
  }
  .bar.late {
    stroke: var(--_bad);
    stroke-width: 1;
  }
  .late-ground {
    fill: var(--_bad-wash);
  }
  .late-hatch {
    fill: none;
    stroke: var(--_bad);
    stroke-width: 1.5;
  }
  .beyond {
    fill: none;
    stroke: var(--_bad);
    stroke-width: 3;
  }
  .booked {
    fill: none;
    stroke: var(--_ink);
    stroke-width: 2;
  }
  text.booked-text {
    font-weight: 700;
  }
  .mark-line {
    stroke: var(--_ink);
    stroke-dasharray: 1 2;
  }
  .dot {
    fill: var(--_ink);
  }
  text.piece {
    font-weight: 600;
    paint-order: stroke;
    stroke-width: 3px;
  }
  text.piece.usable {
    fill: var(--_on-usable);
    stroke: var(--_usable);
  }
  text.piece.lead-out {
    stroke: var(--_lead-out);
  }
  text.piece.margin {
    stroke: var(--_margin);
  }
  .halo {
    paint-order: stroke;
    stroke: var(--_paper);
    stroke-width: 3px;
  }
  @media (forced-colors: active) {
    .bar.on-time {
      fill: CanvasText;
    }
    .late-ground {
      fill: Canvas;
    }
    .late-hatch,
    .bar.late,
    .booked,
    .mark-line,
    .beyond {
      stroke: CanvasText;
    }
    text.piece.usable {
      fill: Canvas;
      stroke: CanvasText;
    }
    text.piece:is(.lead-out, .margin) {
      fill: CanvasText;
      stroke: Canvas;
    }
    svg text:not(.piece) {
      fill: CanvasText;
    }
  }
`;
