import { css } from 'lit';

/** What a verdict looks like, on screen and on paper. */
export const cellStyles = css`
  td {
    line-height: 1.2;
  }
  td .amount {
    display: flex;
    align-items: center;
    gap: 0.3125rem;
    font-size: var(--_text);
    font-weight: 600;
    white-space: nowrap;
  }
  /* What is set out by its own letters still stands at the side where its row begins. */
  :host(:dir(rtl)) :is(th, td) .run {
    text-align: right;
  }
  td .word {
    font-size: var(--_small);
  }
  td.fits {
    background: var(--_good-wash);
  }
  td.fits :is(.amount, .word) {
    color: var(--_good);
  }
  td.near {
    background: var(--_bad-wash);
  }
  td.short :is(.amount, .word) {
    color: var(--_bad);
  }
  td.short .amount {
    font-weight: 500;
  }
  td.part :is(.amount, .word) {
    color: var(--_ink);
  }
  td.near .amount {
    font-weight: 650;
  }
  td:is(.never, .no) {
    color: var(--_quiet);
  }
  td:is(.never, .no) .amount {
    font-weight: 400;
  }
  td .word {
    overflow: hidden;
    text-overflow: ellipsis;
    white-space: nowrap;
  }
  td:hover {
    box-shadow: inset 0 0 0 1px var(--_act);
  }
  td[aria-selected='true'] {
    box-shadow: inset 0 0 0 2px var(--_act);
  }
  td:focus-visible {
    outline: 2px solid var(--_focus);
    outline-offset: -4px;
  }
  .mark {
    flex: none;
    fill: none;
    stroke: currentColor;
    stroke-width: 1.5;
  }
  .mark:is(.fits, .part) {
    fill: currentColor;
    fill-rule: evenodd;
    stroke: none;
  }
  .mark.never {
    stroke-width: 2;
  }
  .mark.no {
    display: none;
  }
  @media (forced-colors: active) {
    td.short {
      border: 1px dashed CanvasText;
    }
    td[aria-selected='true'] {
      outline: 2px solid Highlight;
      outline-offset: -2px;
    }
  }
`;
