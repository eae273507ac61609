import { css } from 'lit';

export const styles = css`
  @media print {
    .more::details-content {
      content-visibility: visible;
      block-size: auto;
    }
  }
  .bar {
    fill: var(--_act);
  }
  @media (forced-colors: active) {
    .bar {
      fill: CanvasText;
    }
  }
`;
