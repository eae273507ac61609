import { css } from 'lit';

/** The end of the window along time: work, lead-out and what is left to the booked end. */
export const endPictureStyles = css`
  .tick {
    stroke: var(--_hair);
  }
  text.soft {
    fill: var(--_quiet);
  }
  .needed {
    fill: none;
    stroke: var(--_rule);
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
    .booked,
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
