import { css } from 'lit';

/** The desk where it is narrow, down to a phone: one column, the cautions folded at the foot. */
export const narrowStyles = css`
  @container desk (max-width: 64rem) {
    .desk {
      grid-template: 'top' auto 'main' auto 'side' 1fr 'foot' auto / minmax(0, 1fr);
      height: auto;
      min-height: 100dvh;
    }
    .desk.one {
      grid-template: 'top' auto 'main' 1fr 'foot' auto / minmax(0, 1fr);
    }
    .picture {
      overflow: clip visible;
      max-height: none;
    }
    .picture.long {
      overflow: auto;
      max-height: 70svh;
    }
    possession-sheet {
      flex: none;
      height: 22rem;
    }
    possession-sheet.only {
      height: 32rem;
    }
    possession-fit {
      flex: none;
      max-height: 36rem;
    }
    aside {
      border-inline-start: 0;
      border-top: 2px solid var(--_rule);
      scroll-margin-top: 0.5rem;
    }
    .up {
      display: inline-block;
      margin-bottom: 0.5rem;
    }
    footer {
      position: sticky;
      bottom: 0;
      z-index: 4;
    }
  }
  @container desk (max-width: 40rem) {
    .named p {
      display: none;
    }
    .ways span,
    .product,
    .tools .kept:not(.bad) {
      display: none;
    }
    .top {
      grid-template:
        'title tools' auto 'places places' auto 'ways ways' auto / minmax(7rem, 1fr)
        minmax(0, max-content);
      align-items: center;
    }
    .title {
      padding-inline-start: 0.75rem;
    }
    h1 {
      font-size: var(--_lead);
    }
    .tools {
      gap: 0.25rem;
    }
    .tools button {
      padding-inline: 0.5rem;
    }
    .ways {
      padding-inline: 0.5rem;
    }
    .unfold {
      display: inline-block;
    }
    .answer.folded > :is(.search, .rests) {
      display: none;
    }
    .answer:not(.folded) .said {
      flex-basis: 100%;
    }
    .bar .choice {
      flex-wrap: nowrap;
      overflow-x: auto;
      max-width: 100%;
      scrollbar-width: thin;
    }
    .bar .choice button {
      flex: none;
    }
    .urgent :is(table, tbody) {
      display: block;
    }
    .urgent thead {
      position: absolute;
      clip-path: inset(50%);
    }
    .urgent tr {
      display: flex;
      flex-wrap: wrap;
      gap: 0 0.75rem;
      padding-block: 0.375rem;
      border-bottom: 1px solid var(--_hair);
    }
    .urgent tbody td:nth-child(n) {
      width: auto;
      padding: 0;
      border: 0;
      white-space: normal;
    }
    .urgent td:nth-child(3) {
      flex: 1 0 100%;
      order: 1;
    }
    .urgent td:last-child {
      margin-inline-start: auto;
    }

    [role='tab'] {
      padding: 0.5rem 0.75rem 0.375rem;
      text-align: center;
    }
    [role='tab'] span {
      display: none;
    }
    [role='tab'] strong {
      font-size: var(--_text);
    }
  }
`;
