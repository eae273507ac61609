import { css } from 'lit';

export const styles = css`
  .bar {
    fill: var(--_act);
  }
  @media (forced-colors: active) {
    .bar {
      fill: CanvasText;
    }
  }
`;
