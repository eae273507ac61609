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
      font-size: 8.5pt;
      line-height: 1.25;
    }
    .screen {
      display: none;
    }
    .paper {
      display: block;
      max-width: 190mm;
      margin-inline: auto;
    }
    .paper h2 {
      font-size: 14pt;
    }
    .paper h3 {
      margin-top: 2.5mm;
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
      grid-template-columns: repeat(3, auto);
      gap: 1mm 5mm;
      margin-block: 2mm;
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
      width: 16mm;
    }
    .paper .blanks {
      margin-top: 2.5mm;
      table-layout: fixed;
    }
    .paper .blanks tbody :is(th, td) {
      height: 5.5mm;
      vertical-align: middle;
    }
    .paper .cautions {
      display: block;
      padding: 1mm 0;
      border: 0;
      background: none;
      font-size: 7.5pt;
    }
    .paper .assumptions {
      padding-inline-start: 4mm;
      list-style: disc;
      font-size: 7.5pt;
    }
  }
`;
