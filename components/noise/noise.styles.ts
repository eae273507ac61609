import { css } from 'lit';

export const styles = css`
  .open {
    fill: var(--_usable);
  }
  .not-known {
    fill: none;
    stroke: var(--_rule);
    stroke-dasharray: 3 2;
  }
  svg text.on-open {
    fill: var(--_on-usable);
  }
  svg text.on-shut {
    fill: var(--_bad);
    font-weight: 650;
    paint-order: stroke;
    stroke: var(--_bad-wash);
    stroke-width: 4;
  }
  @media (forced-colors: active) {
    .open {
      fill: CanvasText;
    }
    svg text.on-open {
      fill: Canvas;
    }
    svg text.on-shut {
      stroke: Canvas;
    }
  }
`;
