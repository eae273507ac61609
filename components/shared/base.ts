import { css } from 'lit';
import { tokens } from './tokens.js';

const rules = css`
  :host {
    display: block;
    box-sizing: border-box;
    background: var(--_surface);
    color: var(--_ink);
    /* The family is the page's own, unless it names another for these elements. */
    font-family: var(--possession-font, inherit);
    font-size: var(--_text);
    font-weight: 400;
    font-style: normal;
    line-height: 1.4;
    font-variant-numeric: tabular-nums lining-nums;
    -webkit-text-size-adjust: 100%;
  }
  :host([hidden]),
  [hidden] {
    display: none !important;
  }
  /* It only says together whether its controls can be used. */
  fieldset.changing {
    display: contents;
  }
  /* What cannot be changed reads as text, not as a box to type in. */
  fieldset.changing:disabled :is(input:not([type='checkbox'], [type='radio']), select, textarea) {
    border-color: transparent;
    background: transparent;
    opacity: 1;
  }
  *,
  *::before,
  *::after {
    box-sizing: border-box;
  }
  /* What stands inside another element stands on that one's ground. */
  * {
    --possession-surface: transparent;
  }
  h1,
  h2,
  h3,
  p,
  ul,
  ol,
  dl,
  dd,
  figure {
    margin: 0;
    padding: 0;
  }
  ul,
  ol {
    list-style: none;
  }
  /* In a page from right to left too a sentence that begins with a figure begins with it. */
  :is(p, li, h1, h2, h3, h4, dt, dd, th, td, caption, label, legend, summary, button) {
    unicode-bidi: plaintext;
  }
  :where(p, li, h1, h2, h3, h4, dt, dd, caption) {
    text-align: match-parent;
  }
  :where(th) {
    text-align: start;
  }
  button {
    margin: 0;
    padding: var(--_pad) 0.625rem;
    min-height: var(--_control);
    border: 1px solid var(--_rule);
    border-radius: var(--_radius);
    background: var(--_raised);
    color: var(--_ink);
    font: inherit;
    cursor: pointer;
  }
  button:hover {
    border-color: var(--_act);
    background: var(--_act-wash);
  }
  button:disabled {
    border-color: var(--_hair);
    color: var(--_quiet);
    cursor: default;
  }
  button.strong {
    border-color: var(--_act);
    background: var(--_act);
    color: var(--_paper);
    font-weight: 600;
  }
  button.strong:hover {
    background: color-mix(in oklab, var(--_act), var(--_ink) 25%);
  }
  button.plain {
    padding: 0;
    min-height: 0;
    border: 0;
    border-radius: 0;
    background: none;
    color: var(--_act);
    text-align: start;
    text-decoration: underline;
    text-decoration-thickness: 1px;
    text-underline-offset: 0.2em;
  }
  button.plain:hover {
    text-decoration-thickness: 2px;
  }
  :focus-visible {
    outline: 2px solid var(--_focus);
    outline-offset: 1px;
  }
  table {
    border-collapse: collapse;
    width: 100%;
  }
  th,
  td {
    padding: var(--_pad) 0.5rem;
    border-bottom: 1px solid var(--_hair);
    text-align: match-parent;
    vertical-align: top;
  }
  th {
    color: var(--_quiet);
    font-weight: 600;
  }
  .figure {
    text-align: end;
    white-space: nowrap;
  }
  .quiet {
    color: var(--_quiet);
  }
  /* One of a few ways to look at a thing: a row of buttons that touch, the pressed one told by ground, weight and edge. */
  .choice {
    display: flex;
    flex-wrap: wrap;
    padding-inline-start: 1px;
  }
  .choice > button {
    margin-inline-start: -1px;
    border-radius: 0;
    white-space: nowrap;
  }
  .choice > button:first-child {
    border-start-start-radius: var(--_radius);
    border-end-start-radius: var(--_radius);
  }
  .choice > button:last-child {
    border-start-end-radius: var(--_radius);
    border-end-end-radius: var(--_radius);
  }
  .choice > button[aria-pressed='true'] {
    position: relative;
    border-color: var(--_act);
    background: var(--_act-wash);
    font-weight: 600;
  }
  .choice > button:focus-visible {
    position: relative;
    z-index: 1;
  }
  /* What is unseen is placed in what scrolls: else it makes the page longer than it is. */
  .scroll {
    position: relative;
    overflow: auto;
    max-width: 100%;
  }
  .unseen {
    position: absolute;
    width: 1px;
    height: 1px;
    overflow: hidden;
    clip-path: inset(50%);
    white-space: nowrap;
  }
  svg {
    display: block;
  }
  svg text {
    font-size: var(--_small);
    font-weight: 400;
    fill: var(--_ink);
  }
  /* Nothing here moves, so there is no motion to reduce. */
  @media (forced-colors: active) {
    :focus-visible {
      outline-color: Highlight;
    }
    button.strong {
      border-width: 2px;
    }
    .choice > button[aria-pressed='true'] {
      forced-color-adjust: none;
      border-color: Highlight;
      background: Highlight;
      color: HighlightText;
    }
  }
`;

/** Tokens and the base every element starts from. */
export const base = [tokens, rules];
