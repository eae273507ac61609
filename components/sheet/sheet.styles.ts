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
  .body {
    position: relative;
    height: var(--rows);
    user-select: none;
  }
  .row {
    display: grid;
    grid-template-columns: var(--columns);
    width: max-content;
    min-width: 100%;
    height: 30px;
  }
  .body > .row {
    position: absolute;
    inset-block-start: 0;
    inset-inline: 0;
  }
  .body > .row:not(.opened) {
    contain: layout size style;
  }
  .line {
    position: sticky;
    inset-inline-start: 0;
    z-index: 3;
    grid-row: 1;
    grid-column: 1;
    padding-inline-end: 0.5rem;
    border-inline-end: 1px solid var(--_hair);
    border-block-end: 1px solid var(--_hair);
    background: var(--_paper);
    color: var(--_quiet);
    font-size: var(--_small);
    line-height: 29px;
    text-align: end;
  }
  .chosen > .line {
    box-shadow: inset 3px 0 0 var(--_act);
    color: var(--_ink);
    font-weight: 650;
  }
  .head {
    position: sticky;
    inset-block-start: 0;
    z-index: 4;
    height: 34px;
    background: var(--_paper);
    user-select: none;
  }
  .head > * {
    border-block-end: 1px solid var(--_rule);
  }
  .head > [role='columnheader'] {
    display: flex;
    position: relative;
    align-items: center;
    min-width: 0;
    padding-inline: 0.625rem 0.125rem;
    border-inline-end: 1px solid var(--_hair);
    background: var(--_paper);
    font-size: var(--_small);
    font-weight: 600;
  }
  .head .name {
    flex: 1;
    overflow: hidden;
    text-overflow: ellipsis;
    white-space: nowrap;
  }
  .head .unread {
    color: var(--_quiet);
    font-weight: 400;
    font-style: italic;
  }
  .head .within {
    box-shadow: inset 0 -3px 0 var(--_act);
  }
  .head .filtered .name {
    text-decoration: underline dotted;
    text-underline-offset: 0.25em;
  }
  .head > .first,
  .row > .first {
    position: sticky !important;
    inset-inline-start: var(--gutter);
    z-index: 2;
    border-inline-end-color: var(--_rule) !important;
  }
  .thawed .first {
    position: relative !important;
    inset-inline-start: auto;
    z-index: 0;
  }
  .head .open {
    flex: none;
    min-width: 1.5rem;
    min-height: 1.5rem;
    padding: 0.25rem;
    border-color: transparent;
    background: none;
  }
  .head .open svg {
    margin: auto;
    fill: var(--_quiet);
  }
  .head .open:hover svg {
    fill: var(--_act);
  }
  .head .sizer {
    position: absolute;
    inset-block: 0;
    inset-inline-end: -4px;
    z-index: 1;
    width: 8px;
    cursor: col-resize;
    touch-action: none;
  }
  .head .sizer:hover {
    background: var(--_act);
  }
  .head .rename {
    width: 100%;
    min-width: 0;
    border: 0;
    background: var(--_raised);
    color: var(--_ink);
    font: inherit;
  }
  .status {
    display: flex;
    flex-wrap: wrap;
    gap: 0.125rem 0.875rem;
    align-items: baseline;
    min-height: var(--_control);
    padding: 0.375rem 0.75rem;
    border-block-start: 1px solid var(--_hair);
    color: var(--_quiet);
    font-size: var(--_small);
  }
  .status .said {
    flex: 1 1 14rem;
    overflow: hidden;
    overflow-wrap: anywhere;
    max-height: 3.5rem;
  }
  .status .where {
    margin-inline-end: 0.375rem;
    color: var(--_ink);
    font-weight: 600;
  }
  .status .told {
    color: var(--_ink);
    font-weight: 600;
  }
  .status .wrong {
    color: var(--_bad);
  }
  .none {
    padding: 1rem 0.75rem;
    color: var(--_quiet);
  }
  @media (pointer: coarse) {
    .row {
      height: 40px;
    }
    .head {
      height: 34px;
    }
    .line {
      line-height: 39px;
    }
  }
`;
