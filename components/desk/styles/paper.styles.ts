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
    /* A page's name that changes within begins a new sheet: the desk takes that of what it shows. */
    :host([view='windows']) .desk {
      page: possession-window;
    }
    :host(:is([view='fit'], [view='plan'])) .desk {
      page: possession-plan;
    }
    :host(:is([view='work'], [view='table'])) .desk {
      page: possession-sheet;
    }
    /* A report says of itself what the head of the desk says, and is the sheet. */
    .desk.report {
      page: possession-report;
    }
    .desk.report :is(.top, .answer) {
      display: none;
    }
    .tools,
    .bar,
    .shift-bar,
    .alarm,
    .to-chance,
    .change,
    .move,
    .up,
    footer button,
    .ways,
    .menu,
    .search,
    .shut,
    [role='tablist'] {
      display: none;
    }
    .proposal :is(label, input, button),
    .agreed button {
      display: none;
    }
    :is(.assumed details, .granted)::details-content {
      content-visibility: visible;
      block-size: auto;
    }
    :is(.assumed, .granted) button,
    .accept,
    .agreed-line,
    .proof button,
    .urgent :is(th, td):last-child {
      display: none;
    }
    :is(.assumed, .granted) summary {
      list-style: none;
      font-weight: 600;
    }
    .answer > .rests {
      display: block;
      max-height: none;
      overflow: visible;
    }
    .pad > :nth-child(n) {
      margin: 0;
    }
    .paper-line {
      display: block;
    }
    .plan-name::after {
      display: none;
    }
    .top {
      display: block;
      background: none;
      padding: 0 0 0.375rem;
    }
    .title {
      padding: 0;
    }
    .desk,
    main,
    footer {
      background: none;
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
    /* What the sheet shows carries no cautions of its own; every other view's elements do. */
    :host(:not([view='work'], [view='table'], [view='urgent'], [view='files'])) footer {
      display: none;
    }
  }
`;
