import { css } from 'lit';

/** The frame of the desk: its head, the view in the middle, the foot. */
export const styles = css`
  :host {
    container: desk / inline-size;
    color-scheme: light dark;
    background: var(--_paper);
  }
  :host([theme='light']) {
    color-scheme: light;
  }
  :host([theme='dark']) {
    color-scheme: dark;
  }
  .desk {
    display: grid;
    grid-template:
      'top top' auto 'main side' minmax(0, 1fr) 'foot foot' auto / minmax(0, 1fr)
      23rem;
    height: 100dvh;
    min-height: 32rem;
    background: var(--_paper);
    color: var(--_ink);
  }
  .desk.one {
    grid-template: 'top' auto 'main' minmax(0, 1fr) 'foot' auto / minmax(0, 1fr);
  }
  .top {
    grid-area: top;
    display: grid;
    grid-template:
      'title tools' auto 'places places' auto 'ways ways' auto / minmax(0, 1fr)
      auto;
    gap: 0.25rem 1rem;
    padding-top: 0.5rem;
    border-bottom: 1px solid var(--_rule);
  }
  .title {
    grid-area: title;
    min-width: 0;
    padding-inline-start: 1rem;
    line-height: 1.3;
  }
  .paper-line {
    display: none;
  }
  .product {
    color: var(--_quiet);
    font-size: var(--_small);
  }
  .named {
    display: flex;
    flex-wrap: wrap;
    align-items: baseline;
    gap: 0 0.75rem;
  }
  .named p {
    color: var(--_quiet);
    font-size: var(--_small);
  }
  h1 {
    font-size: var(--_head);
    font-weight: 650;
    letter-spacing: -0.01em;
    overflow-wrap: anywhere;
  }
  .plan-name {
    padding: 0;
    min-height: var(--_control);
    border: 0;
    background: none;
    text-align: start;
  }
  .plan-name::after {
    content: '';
    display: inline-block;
    margin-inline-start: 0.375rem;
    border: 0.3125rem solid transparent;
    border-block-width: 0.375rem 0;
    border-top-color: currentcolor;
    vertical-align: middle;
  }
  .plan-name[aria-expanded='true']::after {
    border-block-width: 0 0.375rem;
    border-bottom-color: currentcolor;
  }
  [role='tablist'] {
    grid-area: places;
    display: flex;
    align-items: stretch;
    overflow-x: auto;
    padding-inline: 0.25rem;
    scrollbar-width: thin;
  }
  [role='tab'] {
    display: grid;
    flex: none;
    align-content: start;
    padding: 0.25rem 0.75rem 0.25rem;
    white-space: nowrap;
    border: 0;
    border-bottom: 4px solid transparent;
    border-radius: 0;
    background: none;
    line-height: 1.25;
    text-align: start;
  }
  [role='tab']:hover {
    background: var(--_act-wash);
  }
  [role='tab'][aria-selected='true'] {
    border-bottom-color: var(--_act);
    background: var(--_raised);
  }
  [role='tab'] strong {
    font-size: var(--_lead);
    font-weight: 650;
  }
  [role='tab'] span {
    color: var(--_quiet);
    font-size: var(--_small);
  }
  .ways {
    grid-area: ways;
    display: flex;
    gap: 0.25rem;
    overflow-x: auto;
    margin-top: -0.25rem;
    padding: 0.25rem 1rem;
    border-top: 1px solid var(--_hair);
    background: var(--_raised);
    scrollbar-width: thin;
  }
  .ways button {
    flex: none;
    border-color: transparent;
    background: none;
    white-space: nowrap;
  }
  .ways button:hover {
    background: var(--_act-wash);
  }
  .ways button[aria-pressed='true'] {
    border-color: var(--_act);
    background: var(--_act-wash);
    font-weight: 600;
  }
  .ways span {
    color: var(--_quiet);
    font-weight: 400;
  }
  .menu {
    position: absolute;
    z-index: 6;
    inset-block-start: 4rem;
    inset-inline-start: 1rem;
    width: min(30rem, calc(100% - 2rem));
    max-height: calc(100dvh - 6rem);
    overflow: auto;
    padding: 1rem;
    border: 1px solid var(--_rule);
    border-radius: var(--_radius);
    background: var(--_raised);
    box-shadow: 0 0.5rem 2rem rgb(0 0 0 / 25%);
  }
  .menu.help {
    inset-inline: auto 1rem;
    width: min(44rem, calc(100% - 2rem));
  }
  .assumed {
    max-height: 45%;
    overflow: auto;
    border-bottom: 1px solid var(--_hair);
    background: var(--_sunk);
  }
  .assumed > * {
    padding: 0.375rem 1rem;
  }
  .assumed details + details {
    border-top: 1px solid var(--_hair);
  }
  .assumed summary {
    min-height: 1.5rem;
    cursor: pointer;
  }
  :is(.assumed, .granted) li {
    max-width: 60rem;
    padding-block: 0.375rem;
    border-top: 1px solid var(--_hair);
  }
  .assumed .refused {
    border-inline-start: 4px solid var(--_bad);
  }
  .assumed .unsaid > summary {
    color: var(--_bad);
  }
  .view > :is(.answer, .bar, .assumed) {
    flex: none;
  }
  .answer {
    display: flex;
    flex-wrap: wrap;
    align-items: start;
    justify-content: space-between;
    gap: 0.25rem 2rem;
    padding: 0.75rem;
    border-bottom: 1px solid var(--_hair);
  }
  /* The answer comes first; a line below it says which plan it is of, and what it takes for granted. */
  .answer > .rests {
    display: flex;
    flex: 1 0 100%;
    flex-wrap: wrap;
    align-items: baseline;
    gap: 0.25rem 2rem;
    max-height: 45vh;
    overflow: auto;
  }
  .rests .granted > summary {
    width: fit-content;
    min-height: 1.5rem;
    padding-block: 0.25rem;
    cursor: pointer;
  }
  .rests .granted[open] {
    flex: 1 0 100%;
  }
  .answer .said {
    flex: 1 1 24rem;
    min-width: 0;
  }
  /* Only a narrow desk folds what stands below the sentence. */
  .unfold {
    display: none;
  }
  .sentence {
    font-size: var(--_head);
    font-weight: 650;
    line-height: 1.25;
    text-wrap: balance;
  }
  .sentence.harm {
    padding-inline-start: 0.625rem;
    border-inline-start: 4px solid var(--_bad);
  }
  .proof {
    margin-top: 0.125rem;
    color: var(--_quiet);
    font-size: var(--_small);
  }
  .search {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 0.5rem;
  }
  .search label {
    color: var(--_quiet);
  }
  :focus-visible {
    outline-offset: -2px;
  }
  .tools {
    grid-area: tools;
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    justify-content: end;
    gap: 0.375rem;
    padding-inline-end: 0.75rem;
  }
  .tools .kept {
    color: var(--_quiet);
    font-size: var(--_small);
  }
  .tools .kept.bad {
    color: var(--_bad);
    font-weight: 600;
  }
  .tools .faulty {
    border-color: var(--_bad);
    color: var(--_bad);
  }
  main {
    position: relative;
    grid-area: main;
    min-width: 0;
    min-height: 0;
    background: var(--_raised);
  }
  .view {
    display: flex;
    flex-direction: column;
    height: 100%;
  }
  .view > * {
    min-height: 0;
  }
  .picture {
    position: relative;
    flex: 1 1 auto;
    overflow: auto;
  }
  possession-sheet {
    flex: 1 1 16rem;
    min-height: 16rem;
    border-top: 2px solid var(--_rule);
  }
  possession-sheet.only {
    border-top: 0;
  }
  possession-fit {
    flex: 1;
  }
  .bar {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 0.375rem 0.75rem;
    padding: 0.5rem 0.75rem;
    border-bottom: 1px solid var(--_hair);
  }
  .bar[slot] {
    padding: 0;
    border: 0;
  }
  .bar select {
    max-width: 100%;
  }
  .bar .said {
    color: var(--_quiet);
  }
  .bar:not([slot]) .said {
    flex: 1 1 14rem;
  }
  .bar select,
  .refused select,
  .search select {
    padding: 0.25rem 0.5rem;
    min-height: var(--_control);
    border: 1px solid var(--_rule);
    border-radius: var(--_radius);
    background: var(--_raised);
    color: inherit;
    font: inherit;
  }
  .fill {
    position: relative;
    flex: 1;
    overflow: auto;
  }
  .pad {
    padding: 0.75rem;
  }
  /* These keep a margin of their own. */
  .pad
    > :is(
      possession-overrun,
      possession-options,
      possession-account,
      possession-compare,
      possession-lifting,
      possession-noise,
      possession-people,
      possession-report,
      possession-rules,
      possession-units,
      possession-wanted,
      possession-where
    ) {
    margin: -0.75rem;
  }
  .pad > .agreed-line + * {
    margin-block-start: 0;
  }
  footer {
    grid-area: foot;
    padding: 0.375rem 0.75rem;
    border-top: 1px solid var(--_rule);
    background: var(--_sunk);
    color: var(--_quiet);
    font-size: var(--_small);
    line-height: 1.35;
  }
  footer p {
    display: inline;
    margin-inline-end: 0.375em;
  }
  footer button {
    font-size: inherit;
  }
  footer:not(.whole) p:not(:first-child) {
    display: none;
  }
  /* Where a figure is decided by, they stand in full if there is room. */
  @container desk (min-width: 64.01rem) {
    :host(:is([view='handback'], [view='cost'])) footer:not(.whole) p:not(:first-child) {
      display: inline;
    }
    :host(:is([view='handback'], [view='cost'])) footer button {
      display: none;
    }
  }
  footer strong {
    color: var(--_ink);
    font-weight: 600;
  }
  .trouble {
    padding: 0.5rem 0.75rem;
    background: var(--_bad-wash);
    color: var(--_bad);
    font-weight: 600;
  }
  .news {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 0.375rem 0.75rem;
    padding: 0.375rem 0.75rem;
    border-bottom: 1px solid var(--_hair);
    background: var(--_act-wash);
  }
  /* The answer over the programme says the same, first. */
  possession-plan::part(certificate) {
    display: none;
  }
  /* The foot of the desk says them, once; on paper, and on site in a hand, elements show their own. */
  @media screen {
    .view :not(possession-handback)::part(cautions) {
      display: none;
    }
    @container desk (min-width: 64.01rem) {
      possession-handback::part(cautions) {
        display: none;
      }
    }
  }
  /* There is no transparent border then. */
  @media (forced-colors: active) {
    .plan-name::after {
      border-inline-color: Canvas;
    }
    [role='tab'] {
      border-bottom-color: Canvas;
    }
    [role='tab'][aria-selected='true'] {
      border-bottom-color: Highlight;
    }
    .ways button[aria-pressed='true'] {
      outline: 2px solid Highlight;
      outline-offset: -2px;
    }
  }
  .shift-bar {
    display: flex;
    flex-wrap: wrap;
    gap: 0.25rem 1.25rem;
    align-items: center;
    padding: 0.25rem 0.75rem;
  }
  .shift-choice {
    display: inline-flex;
    gap: 0.5rem;
    align-items: center;
    min-height: var(--_on-site);
  }
  .shift-choice input[type='checkbox'] {
    width: 1.75rem;
    height: 1.75rem;
    accent-color: var(--_act);
  }
  .shift-choice input[type='text'] {
    width: 6rem;
    min-height: var(--_on-site);
    padding-inline: 0.5rem;
    border: 1px solid var(--_rule);
    border-radius: var(--_radius);
    background: var(--_raised);
    color: var(--_ink);
    font: inherit;
    font-size: var(--_head);
    text-transform: uppercase;
  }
  .to-chance {
    display: grid;
    gap: 0.5rem;
    justify-items: start;
    margin-block-end: 0.75rem;
    padding: 0.625rem 0.75rem;
    border: 1px solid var(--_rule);
    border-radius: var(--_radius);
    background: var(--_raised);
  }
  .to-chance :is(h3, ul, p) {
    margin: 0;
  }
  .to-chance h3 .quiet {
    font-weight: 400;
  }
  .to-chance :is(th, td) {
    padding: 0.25rem 1rem 0.25rem 0;
    border-bottom: 1px solid var(--_hair);
    text-align: start;
    vertical-align: baseline;
  }
  .in-shift button {
    min-height: var(--_on-site);
    padding-inline: 1rem;
  }
  .alarm {
    display: flex;
    flex-wrap: wrap;
    gap: 0.75rem;
    align-items: center;
    justify-content: space-between;
    padding: 0.75rem;
    border: 3px solid var(--_bad);
    background: var(--_bad-wash);
    font-size: var(--_head);
  }
  .alarm button {
    min-height: var(--_on-site);
    padding-inline: 1.5rem;
  }
`;
