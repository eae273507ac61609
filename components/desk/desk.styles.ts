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
    grid-template: 'title tools' auto 'views views' auto / minmax(0, 1fr) auto;
    gap: 0.25rem 1rem;
    padding-top: 0.5rem;
    border-bottom: 2px solid var(--_ink);
  }
  .title {
    grid-area: title;
    display: flex;
    flex-wrap: wrap;
    align-items: baseline;
    gap: 0 0.75rem;
    min-width: 0;
    padding-inline-start: 0.75rem;
    line-height: 1.25;
  }
  h1 {
    font-size: var(--_head);
    font-weight: 650;
    letter-spacing: -0.01em;
    overflow-wrap: anywhere;
  }
  .title p {
    color: var(--_quiet);
    font-size: var(--_small);
  }
  [role='tablist'] {
    grid-area: views;
    display: flex;
    align-items: stretch;
    overflow-x: auto;
    scrollbar-width: thin;
  }
  [role='tab'] {
    display: grid;
    flex: none;
    align-content: start;
    padding: 0.25rem 0.75rem 0.1875rem;
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
    flex: 0 1 auto;
    overflow: auto;
    max-height: 60%;
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
  .bar .said {
    flex: 1 1 14rem;
    color: var(--_quiet);
  }
  .choice {
    display: flex;
    flex-wrap: wrap;
  }
  .choice button {
    border-radius: 0;
    margin-inline-start: -1px;
  }
  .choice button[aria-pressed='true'] {
    position: relative;
    border-color: var(--_act);
    background: var(--_act-wash);
    font-weight: 600;
  }
  .bar select {
    padding: 0.25rem 0.5rem;
    min-height: 1.75rem;
    border: 1px solid var(--_rule);
    border-radius: var(--_radius);
    background: var(--_raised);
    color: inherit;
    font: inherit;
  }
  .fill {
    flex: 1;
    overflow: auto;
  }
  .pad {
    padding: 0.75rem;
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
    display: none;
    font-size: inherit;
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
  /* On a wide screen the foot of the desk says them, always in sight; a narrow one and paper show each element's own. */
  @media screen {
    @container desk (min-width: 64.01rem) {
      possession-account::part(cautions),
      possession-booking::part(cautions),
      possession-lifting::part(cautions),
      possession-noise::part(cautions),
      possession-options::part(cautions),
      possession-people::part(cautions),
      possession-rules::part(cautions),
      possession-compare::part(cautions),
      possession-handback::part(cautions),
      possession-overrun::part(cautions),
      possession-units::part(cautions) {
        display: none;
      }
    }
  }
  @media (forced-colors: active) {
    [role='tab'][aria-selected='true'] {
      border-bottom-color: Highlight;
    }
  }
`;
