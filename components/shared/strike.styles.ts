import { css } from 'lit';

/** Marks of a picture along time: hair lines, words, and what is shut or broken, struck through as well as coloured. */
export const strikeStyles = css`
  .picture {
    overflow: hidden;
  }
  svg text.soft {
    fill: var(--_quiet);
  }
  .hair {
    stroke: var(--_hair);
  }
  .rule {
    stroke: var(--_rule);
  }
  .shut {
    fill: var(--_bad-wash);
    stroke: var(--_bad);
    stroke-width: 0.75;
  }
  .slash {
    stroke: var(--_bad);
    stroke-width: 1.25;
  }
  .mark {
    fill: var(--_bad);
  }
  @media (forced-colors: active) {
    .shut,
    .mark {
      stroke: CanvasText;
      fill: Canvas;
    }
    .mark {
      fill: CanvasText;
    }
    .slash,
    .rule {
      stroke: CanvasText;
    }
    .hair {
      stroke: GrayText;
    }
    svg text,
    svg text.soft {
      fill: CanvasText;
    }
  }
`;
