import { css } from 'lit';

export const styles = css`
  .curve {
    fill: none;
    stroke: var(--_act);
    stroke-width: 2;
    stroke-linejoin: round;
  }
  .limit {
    stroke: var(--_bad);
    stroke-width: 1.5;
    stroke-dasharray: 6 3;
  }
  svg text.limit-word,
  svg text.on-shut {
    fill: var(--_bad);
    font-weight: 650;
    paint-order: stroke;
    stroke: var(--_raised);
    stroke-width: 3;
  }
  svg text.on-shut {
    stroke: var(--_bad-wash);
  }
  .ready {
    fill: var(--_good);
  }
  @media (forced-colors: active) {
    .curve,
    .limit {
      stroke: CanvasText;
    }
    .ready {
      fill: CanvasText;
    }
    svg text.limit-word,
    svg text.on-shut {
      stroke: Canvas;
    }
  }
`;
