import { css } from 'lit';

/** A bar of our own for `<progress>`: thin, and moving where nobody knows how long. */
export const progressStyle = css`
  progress {
    appearance: none;
    inline-size: 10rem;
    block-size: 0.375rem;
    border: 0;
    border-radius: 0.1875rem;
    background: var(--_hair);
    overflow: hidden;
    color: var(--_act);
  }
  progress::-webkit-progress-bar {
    background: var(--_hair);
  }
  progress::-webkit-progress-value {
    border-radius: 0.1875rem;
    background: var(--_act);
  }
  progress::-moz-progress-bar {
    background: var(--_act);
  }
  progress:indeterminate {
    background: linear-gradient(90deg, transparent 35%, var(--_act) 50%, transparent 65%) 0 0 / 200%
      100% var(--_hair);
    animation: under-way 1.6s linear infinite;
  }
  progress:indeterminate::-webkit-progress-bar {
    background: transparent;
  }
  progress:indeterminate::-moz-progress-bar {
    background: transparent;
  }
  @keyframes under-way {
    from {
      background-position: 100% 0;
    }
    to {
      background-position: -100% 0;
    }
  }
  @media (prefers-reduced-motion: reduce) {
    progress:indeterminate {
      animation-duration: 8s;
    }
  }
  @media (forced-colors: active) {
    progress {
      border: 1px solid CanvasText;
    }
    progress::-webkit-progress-value {
      background: Highlight;
      forced-color-adjust: none;
    }
  }
`;
