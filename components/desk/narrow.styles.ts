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
    .ways span {
      display: none;
    }
    .top {
      grid-template: 'title' auto 'tools' auto 'places' auto 'ways' auto / minmax(0, 1fr);
    }
    .tools {
      justify-content: start;
      padding-inline: 1rem;
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
