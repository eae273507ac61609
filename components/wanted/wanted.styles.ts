import { css } from 'lit';
import { sharedStyles } from '../where/where.styles.js';

export const wantedStyles = [
  sharedStyles,
  css`
    .who {
      font-weight: 600;
    }
    .foot {
      stroke: var(--_rule);
    }
    .bar {
      fill: var(--_usable);
    }
    .bar.short {
      fill: var(--_bad-wash);
      stroke: var(--_bad);
      stroke-width: 1.5;
    }
    .held {
      stroke: var(--_ink);
      stroke-width: 2;
    }
    .mark {
      fill: var(--_bad);
    }
    @media print {
      .bar {
        fill: #bbb;
        stroke: #000;
      }
      .bar.short {
        fill: #fff;
      }
    }
    @media (forced-colors: active) {
      .bar {
        fill: Canvas;
        stroke: CanvasText;
        forced-color-adjust: none;
      }
      .held {
        stroke: Highlight;
      }
    }
  `,
];
