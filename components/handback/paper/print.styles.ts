import { css } from 'lit';

/** On paper: one window on one sheet of A4, black on white, and nothing of the screen. */
export const printStyles = css`
  .paper {
    display: none;
  }
  @media print {
    :host {
      color-scheme: light;
      container-type: normal;
      background: #fff;
      color: #000;
      font-size: 8pt;
      line-height: 1.2;
    }
    .screen {
      display: none;
    }
    .paper {
      display: block;
      max-width: 190mm;
      margin-inline: auto;
      /* Half of the outer line of a table lies outside it: without room the page cuts it off. */
      padding-inline: 0.3mm;
    }
    .paper h2 {
      font-size: 14pt;
    }
    .paper h3 {
      margin-top: 1.5mm;
      font-size: 9pt;
    }
    .paper :is(th, td) {
      padding: 0.7mm 1.2mm;
      border: 0.2mm solid #000;
      color: #000;
    }
    .paper thead th {
      font-size: 7.5pt;
      vertical-align: bottom;
    }
    .paper :is(.quiet, .verdict) {
      color: #000;
    }
    .paper .facts {
      display: grid;
      grid-template-columns: repeat(4, auto);
      gap: 0.8mm 4mm;
      margin-block: 1.5mm;
    }
    .paper dt {
      font-size: 7.5pt;
    }
    .paper dd {
      font-weight: 650;
    }
    .paper table {
      break-inside: auto;
    }
    .paper thead {
      display: table-header-group;
    }
    .paper :is(tr, li, .cautions, .blanks) {
      break-inside: avoid;
    }
    .paper :is(h2, h3) {
      break-after: avoid;
    }
    .paper :is(th, td) {
      overflow-wrap: anywhere;
    }
    .paper .steps td {
      white-space: nowrap;
    }
    .paper .steps .blank {
      width: 14mm;
    }
    .paper .steps th[scope='row'] {
      width: 34%;
    }
    .paper .blanks th:first-child {
      width: 42%;
    }
    .paper .pair {
      display: grid;
      grid-template-columns: 1fr 1fr;
      gap: 4mm;
      margin-top: 2mm;
      break-inside: avoid;
    }
    .paper .blanks {
      align-self: start;
      width: 100%;
      table-layout: fixed;
    }
    .paper .blanks tbody :is(th, td) {
      height: 5.5mm;
      vertical-align: middle;
    }
    .paper .cautions {
      display: block;
      padding: 0.5mm 0;
      border: 0;
      background: none;
      font-size: 7pt;
    }
    .paper .assumptions {
      padding-inline-start: 4mm;
      list-style: disc;
      font-size: 7pt;
    }
    .paper .steps thead th:nth-last-child(-n + 2) {
      white-space: nowrap;
    }
    .log-paper {
      break-before: page;
    }
    .log-paper :is(td:nth-child(2), td:nth-child(4), code) {
      white-space: nowrap;
    }
    .paper.dense {
      font-size: 7pt;
      line-height: 1.1;
    }
    .paper.dense :is(th, td) {
      padding-block: 0.45mm;
    }
    .paper.dense .blanks tbody :is(th, td) {
      height: 4.6mm;
    }
    .paper.dense :is(.cautions, .assumptions) {
      font-size: 6.5pt;
    }
  }
`;
