import { css } from 'lit';

/** The minutes of the overrun: a field and a slider. */
export const minutesStyles = css`
  .minutes {
    display: grid;
    grid-template-columns: minmax(0, 1fr) auto;
    align-items: center;
    gap: 0 0.75rem;
    align-self: end;
  }
  .minutes label {
    grid-column: 1 / -1;
    color: var(--_quiet);
  }
  .exact {
    display: flex;
    align-items: baseline;
    gap: 0.375rem;
  }
  input {
    margin: 0;
    color: inherit;
    font: inherit;
    font-variant-numeric: inherit;
  }
  input[type='number'] {
    width: 5.5rem;
    min-height: var(--_control);
    padding: 0.125rem 0.5rem;
    border: 1px solid var(--_rule);
    border-radius: var(--_radius);
    background: var(--_raised);
    font-size: var(--_head);
    font-weight: 650;
    text-align: end;
  }
  input[aria-invalid='true'] {
    border: 2px solid var(--_bad);
    background: var(--_bad-wash);
  }
  input[type='range'] {
    appearance: none;
    width: 100%;
    min-width: 0;
    height: 2.25rem;
    background: none;
    cursor: pointer;
  }
  input[type='range']::-webkit-slider-runnable-track {
    height: 4px;
    border-radius: 2px;
    background: var(--_rule);
  }
  input[type='range']::-moz-range-track {
    height: 4px;
    border-radius: 2px;
    background: var(--_rule);
  }
  input[type='range']::-webkit-slider-thumb {
    appearance: none;
    width: 14px;
    height: 26px;
    margin-top: -11px;
    border: 2px solid var(--_paper);
    border-radius: 5px;
    background: var(--_act);
  }
  input[type='range']::-moz-range-thumb {
    width: 14px;
    height: 26px;
    border: 2px solid var(--_paper);
    border-radius: 5px;
    background: var(--_act);
  }
  .refused {
    grid-column: 1 / -1;
    min-height: 1.4em;
    color: var(--_bad);
    font-size: var(--_small);
    text-align: end;
  }
  @media (forced-colors: active) {
    input[type='range']::-webkit-slider-runnable-track {
      background: CanvasText;
    }
    input[type='range']::-webkit-slider-thumb {
      border-color: Canvas;
      background: Highlight;
    }
  }
`;
