import { css } from 'lit';

export const styles = css`
  :host {
    display: flex;
    flex-direction: column;
    min-height: 0;
    background: var(--_raised);
  }
  .scroller {
    position: relative;
    flex: 1;
    min-height: 6rem;
    overflow: auto;
    overscroll-behavior: contain;
  }
  .scroller:focus-visible {
    outline-offset: -2px;
  }
  .canvas {
    position: relative;
    min-width: 100%;
    width: max-content;
  }
  .row {
    display: grid;
    grid-template-columns: var(--columns);
    width: max-content;
    min-width: 100%;
    height: 30px;
  }
  .head {
    position: sticky;
    top: 0;
    z-index: 2;
    height: 34px;
    border-bottom: 1px solid var(--_rule);
    background: var(--_raised);
  }
  .head > * {
    padding-top: 0.5625rem;
    color: var(--_quiet);
    font-size: var(--_small);
    font-weight: 600;
    line-height: 1rem;
  }
  .head .unread {
    font-weight: 400;
    font-style: italic;
  }
  .row > * {
    overflow: hidden;
    padding-inline: 0.625rem;
    border-right: 1px solid var(--_hair);
    text-overflow: ellipsis;
    white-space: nowrap;
  }
  .body > .row > * {
    padding-top: 0.375rem;
    border-bottom: 1px solid var(--_hair);
    line-height: 1.125rem;
  }
  .row > :first-child {
    position: sticky;
    inset-inline-start: 0;
    z-index: 1;
    border-right-color: var(--_rule);
    background: var(--_raised);
    font-weight: 650;
  }
  .fault {
    background: var(--_bad-wash) !important;
    color: var(--_bad);
  }
  .fault.warning {
    background: var(--_curfew) !important;
    color: var(--_ink);
  }
  .fault .sign {
    font-weight: 700;
  }
  .at {
    box-shadow: inset 0 0 0 2px var(--_act);
  }
  .chosen > * {
    background: var(--_act-wash);
  }
  .status {
    display: flex;
    flex-wrap: wrap;
    gap: 0.125rem 0.875rem;
    align-items: baseline;
    min-height: 2rem;
    padding: 0.375rem 0.75rem;
    border-top: 1px solid var(--_hair);
    color: var(--_quiet);
    font-size: var(--_small);
  }
  .status .said {
    flex: 1 1 16rem;
    overflow-wrap: anywhere;
  }
  .status .wrong {
    color: var(--_bad);
  }
  .none {
    padding: 1rem 0.75rem;
    color: var(--_quiet);
  }
  @media (forced-colors: active) {
    .at {
      outline: 2px solid Highlight;
      outline-offset: -2px;
    }
  }
`;
