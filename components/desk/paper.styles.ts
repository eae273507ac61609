import { css } from 'lit';

export const paperStyles = css`
  /* Paper carries the plan's name, the view and the cautions, and none of the desk's own bars. */
  @media print {
    :host {
      color-scheme: light;
      background: none;
    }
    .desk,
    .desk.one {
      display: block;
      height: auto;
      min-height: 0;
    }
    .tools,
    .bar,
    .change,
    .move,
    .up,
    footer button,
    [role='tablist'] {
      display: none;
    }
    .top {
      display: block;
      padding: 0 0 0.375rem;
    }
    .title {
      padding: 0;
    }
    .view,
    .fill,
    .picture,
    aside {
      display: block;
      height: auto;
      max-height: none;
      overflow: visible;
      padding: 0;
      border: 0;
    }
    possession-sheet:not(.only),
    possession-import {
      display: none;
    }
    footer,
    footer:not(.whole) p:not(:first-child) {
      display: block;
      position: static;
    }
    footer {
      break-inside: avoid;
    }
  }
`;
