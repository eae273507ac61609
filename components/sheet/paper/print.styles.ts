import { css } from 'lit';

/** The sheet on paper: a plain table replaces the scrolling grid. */
export const printStyles = css`
  .printed {
    display: none;
  }
  @media print {
    :host(:not([hidden])) {
      page: possession-sheet;
      display: block;
      overflow: visible !important;
      height: auto !important;
      max-height: none !important;
    }
    .printed {
      display: block;
      color: black;
    }
    .printed ~ * {
      display: none !important;
    }
    .printed table {
      border-collapse: collapse;
      width: 100%;
      font-size: 8pt;
    }
    .printed caption {
      padding-block: 0.25em 0.5em;
      font-weight: 650;
      text-align: start;
    }
    .printed th,
    .printed td {
      padding: 0.2em 0.5em;
      border: 0.5pt solid #888;
      background: none;
      overflow-wrap: break-word;
      text-align: start;
      vertical-align: top;
      white-space: pre-line;
    }
    .printed td.figures {
      text-align: end;
    }
    .printed table + table {
      break-before: page;
    }
    .printed thead {
      display: table-header-group;
    }
    .printed tr {
      break-inside: avoid;
    }
  }
`;
