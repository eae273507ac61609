import { css } from 'lit';

/** The curve of cost and the line of chances. */
export const pictureStyles = css`
  .curve-frame {
    cursor: crosshair;
  }
  svg {
    max-width: 100%;
  }
  .grid {
    stroke: var(--_hair);
  }
  .tick {
    stroke: var(--_rule);
  }
  svg text.soft {
    fill: var(--_quiet);
  }
  .under {
    fill: var(--_lead-in);
    opacity: 0.55;
  }
  .line {
    fill: none;
    stroke: var(--_act);
    stroke-width: 2;
  }
  .leader {
    stroke: var(--_rule);
    stroke-width: 0.75;
    stroke-dasharray: 1 2;
  }
  .leader.hidden {
    stroke: none;
  }
  .dot {
    fill: var(--_ink);
  }
  .mark {
    fill: var(--_paper);
    stroke: var(--_ink);
  }
  svg text.number {
    font-size: 0.625rem;
    font-weight: 600;
  }
  line.asked {
    stroke: var(--_bad);
    stroke-width: 1.5;
  }
  circle.asked {
    fill: var(--_paper);
    stroke: var(--_bad);
    stroke-width: 2.5;
  }
  .quantile {
    stroke: var(--_ink);
    stroke-dasharray: 4 3;
  }
  svg text.halo {
    font-weight: 600;
    paint-order: stroke;
    stroke: var(--_paper);
    stroke-width: 3px;
    stroke-linejoin: round;
  }

  @media (forced-colors: active) {
    .line {
      stroke: CanvasText;
    }
    .under {
      fill: none;
    }
    .grid {
      stroke-width: 0.5;
    }
    .grid,
    .tick,
    .leader:not(.hidden) {
      stroke: GrayText;
    }
    svg text,
    svg text.soft {
      fill: CanvasText;
      stroke: none;
    }
    .mark {
      fill: Canvas;
      stroke: CanvasText;
    }
    .dot {
      fill: CanvasText;
    }
    line.asked,
    circle.asked {
      fill: Canvas;
      stroke: Highlight;
    }
    .quantile {
      stroke: CanvasText;
    }
  }
`;
