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
  .barred {
    fill: var(--_sunk);
    stroke: var(--_rule);
    stroke-width: 0.75;
  }
  .slash.plain {
    stroke: var(--_rule);
  }
  svg text.on-barred {
    fill: var(--_ink);
    paint-order: stroke;
    stroke: var(--_sunk);
    stroke-width: 4;
  }
  @media (forced-colors: active) {
    .open {
      fill: CanvasText;
    }
    svg text.on-open {
      fill: Canvas;
    }
    .barred {
      fill: Canvas;
      stroke: CanvasText;
    }
    svg text.on-barred {
      fill: CanvasText;
      stroke: Canvas;
    }
  }
`;
