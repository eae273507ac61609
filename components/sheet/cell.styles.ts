import { css } from 'lit';

/** A cell: text, fault, selection and editor. */
export const cellStyles = css`
  /* Set here rather than inherited: an inherited value makes the browser restyle a cell whenever its row moves. */
  .body > .row *,
  .body > .row *::before,
  .body > .row *::after {
    box-sizing: border-box;
  }
  .body > .row > :not(.line) {
    position: relative;
    grid-row: 1;
    overflow: hidden;
    padding-inline: 0.625rem;
    border-inline-end: 1px solid var(--_hair);
    border-block-end: 1px solid var(--_hair);
    background: var(--_raised);
    line-height: 29px;
    text-overflow: ellipsis;
    white-space: nowrap;
    unicode-bidi: plaintext;
    text-align: match-parent;
    cursor: cell;
  }
  .body > .row > .first {
    font-weight: 650;
  }
  .head > .figures,
  .body > .row > .figures {
    text-align: end;
  }
  /* Calculated, not typed: another background and italics. */
  .body > .row > .result,
  .row.head > .result {
    background: var(--_sunk);
    font-style: italic;
    cursor: help;
  }
  .body > .row > .result.quiet {
    color: var(--_quiet);
  }
  .body > .row > .result.harm {
    color: var(--_bad);
    font-weight: 600;
  }
  .body > .row > .fault.error {
    background: var(--_bad-wash);
    color: var(--_bad);
  }
  .body > .row > .fault.warning {
    background: var(--_curfew);
    color: var(--_ink);
  }
  .fault .sign {
    font-weight: 700;
  }
  .body > .row > [aria-selected='true']:not(.fault) {
    background: var(--_act-wash);
  }
  .body > .row > .at:not(.fault) {
    background: var(--_raised);
  }
  /* Another person is at the cell: a dashed outline and their name, so that colour is not needed. */
  .body > .row > .other {
    outline: 2px dashed var(--_quiet);
    outline-offset: -2px;
  }
  .body > .row > .other::before {
    position: absolute;
    inset-block-start: 0;
    inset-inline-end: 0;
    max-width: 100%;
    padding-inline: 0.25rem;
    overflow: hidden;
    background: var(--_ink);
    color: var(--_raised);
    font-size: 0.625rem;
    font-style: normal;
    font-weight: 600;
    line-height: 1.2;
    content: attr(data-other);
    pointer-events: none;
  }
  [data-edge]::after {
    position: absolute;
    inset: 0;
    border: 0 solid var(--_act);
    content: '';
    pointer-events: none;
  }
  [data-edge~='top']::after {
    border-block-start-width: 2px;
  }
  [data-edge~='bottom']::after {
    border-block-end-width: 2px;
  }
  [data-edge~='start']::after {
    border-inline-start-width: 2px;
  }
  [data-edge~='end']::after {
    border-inline-end-width: 2px;
  }
  .grip {
    position: absolute;
    inset-block-end: 0;
    inset-inline-end: 0;
    z-index: 1;
    width: 10px;
    height: 10px;
    border-start-start-radius: 10px;
    background: var(--_act);
    cursor: crosshair;
    touch-action: none;
  }
  /* Above the following rows, which its list of choices overlaps. */
  .body > .row.opened {
    z-index: 3;
  }
  .body > .row > .open {
    overflow: visible;
    z-index: 3;
  }
  .typing {
    position: absolute;
    inset-block-start: 0;
    inset-inline-start: 0;
    z-index: 2;
    margin: 0;
    padding: 0 0.625rem;
    width: 100%;
    min-width: 8rem;
    min-height: 100%;
    border: 0;
    outline: 2px solid var(--_focus);
    outline-offset: -2px;
    background: var(--_raised);
    color: var(--_ink);
    font: inherit;
    font-variant-numeric: inherit;
    line-height: 29px;
    text-align: inherit;
    resize: none;
    user-select: text;
  }
  .choices {
    position: absolute;
    inset-block-start: 100%;
    inset-inline-start: 0;
    z-index: 4;
    overflow: auto;
    min-width: 100%;
    max-height: 11rem;
    border: 1px solid var(--_rule);
    background: var(--_raised);
    color: var(--_ink);
    font-weight: 400;
    text-align: start;
  }
  .choices.above {
    inset-block: auto 100%;
  }
  .choices > * {
    padding-inline: 0.625rem;
    cursor: pointer;
  }
  .choices > [aria-selected='true'],
  .choices > :hover {
    background: var(--_act-wash);
  }
  @media (pointer: coarse) {
    .body > .row > :not(.line),
    .typing {
      line-height: 39px;
    }
    .grip::after {
      position: absolute;
      inset: -14px;
      content: '';
    }
  }
  @media (forced-colors: active) {
    [data-edge]::after {
      border-color: Highlight;
    }
    .grip {
      forced-color-adjust: none;
      background: Highlight;
    }
  }
`;
