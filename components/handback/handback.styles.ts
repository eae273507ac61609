import { css } from 'lit';

export const styles = css`
  :host {
    container-type: inline-size;
  }
  .empty {
    padding: 0.75rem;
  }
  .busy {
    display: flex;
    align-items: center;
    gap: 0.625rem;
    padding-inline: 0.75rem;
  }
  .busy:not(:empty):has(progress) {
    padding-block: 0.5rem;
  }
  progress {
    width: 10rem;
    accent-color: var(--_act);
  }
  .head,
  .row {
    display: grid;
    grid-template-columns:
      minmax(8rem, 1fr) 8.5rem 11.5rem 6.5rem 8.5rem
      repeat(4, minmax(3.75rem, 5rem));
    column-gap: 0.75rem;
    align-items: baseline;
    padding-inline: 0.75rem;
  }
  .head {
    padding-block: 0.375rem;
    border-bottom: 1px solid var(--_rule);
    background: var(--_raised);
    color: var(--_quiet);
    font-size: var(--_small);
    align-items: end;
  }
  .head .figure {
    white-space: normal;
  }
  .row {
    padding-block: 0.375rem;
    border-bottom: 1px solid var(--_hair);
    cursor: pointer;
  }
  .row:hover,
  .row[aria-selected='true'] {
    background: var(--_act-wash);
  }
  .row[aria-selected='true'] {
    box-shadow: inset 4px 0 0 var(--_act);
  }
  .row:focus-visible {
    outline-offset: -2px;
  }
  .row .label {
    position: absolute;
    width: 1px;
    height: 1px;
    overflow: hidden;
    clip-path: inset(50%);
  }
  .row strong {
    font-weight: 650;
  }
  .row .name span {
    overflow-wrap: anywhere;
  }
  .verdict {
    display: inline-flex;
    align-items: baseline;
    gap: 0.375rem;
    font-weight: 650;
    white-space: nowrap;
  }
  .mark {
    flex: none;
    fill: currentColor;
    align-self: center;
  }
  .mark .ring {
    fill: none;
    stroke: currentColor;
    stroke-width: 1.5;
  }
  .verdict.held {
    color: var(--_good);
  }
  .verdict.eaten-into {
    color: var(--_warn);
  }
  .verdict.overrun {
    color: var(--_bad);
  }
  article {
    padding: 0.75rem;
  }
  h2 {
    font-size: var(--_head);
    font-weight: 650;
    overflow-wrap: anywhere;
  }
  h3 {
    margin-bottom: 0.125rem;
    font-size: var(--_lead);
    font-weight: 650;
    overflow-wrap: anywhere;
  }
  .warned {
    margin-top: 0.375rem;
    padding: 0.375rem 0.625rem;
    border-inline-start: 3px solid var(--_bad);
    background: var(--_bad-wash);
  }
  .end {
    margin-top: 0.75rem;
  }
  .end-parts {
    display: grid;
    grid-template-columns: minmax(0, 1fr) 15rem;
    gap: 1.5rem;
    align-items: start;
    margin-top: 0.375rem;
  }
  .figures th,
  .figures td {
    padding-block: 0.125rem;
  }
  .figures th {
    padding-inline-start: 0;
    font-weight: 400;
  }
  .figures td {
    padding-inline-end: 0;
  }
  summary {
    padding-block: 0.375rem;
    color: var(--_act);
    cursor: pointer;
    text-decoration: underline;
    text-decoration-thickness: 1px;
    text-underline-offset: 0.2em;
  }
  .tables {
    display: grid;
    grid-template-columns: repeat(auto-fit, minmax(min(100%, 25rem), 1fr));
    gap: 1.5rem 2rem;
    margin-top: 1.5rem;
  }
  .tables > * {
    min-width: 0;
  }
  .cut-offs {
    grid-column: 1 / -1;
  }
  tbody th {
    color: var(--_ink);
    font-weight: 400;
    overflow-wrap: anywhere;
  }
  thead .figure {
    white-space: normal;
  }
  thead td {
    border-bottom-color: var(--_rule);
  }
  thead th {
    border-bottom-color: var(--_rule);
    font-size: var(--_small);
    vertical-align: bottom;
  }
  tbody th[scope='row']:not(.figure) {
    min-width: 7rem;
  }
  .units table {
    width: auto;
  }
  .id {
    color: var(--_quiet);
  }
  .time strong {
    font-weight: 650;
  }
  td.short strong {
    color: var(--_bad);
  }
  tr.done :is(th, td, strong) {
    color: var(--_quiet);
    font-weight: 400;
  }
  tr.best > * {
    background: var(--_good-wash);
  }
  tr.best .quiet {
    color: var(--_ink);
  }
  .bars {
    width: 8.5rem;
    vertical-align: middle;
  }
  .share {
    width: 100%;
    max-width: 7.5rem;
  }
  .state {
    white-space: nowrap;
  }
  .track {
    stroke: var(--_hair);
  }
  .filled {
    fill: var(--_usable);
  }
  .aim {
    stroke: var(--_ink);
    stroke-width: 2;
  }

  .tick {
    stroke: var(--_hair);
  }
  text.soft {
    fill: var(--_quiet);
  }
  .floor,
  .needed {
    fill: none;
    stroke: var(--_rule);
  }
  .bar.on-time {
    fill: var(--_usable);
  }
  .bar.late {
    stroke: var(--_bad);
    stroke-width: 1;
  }
  .late-ground {
    fill: var(--_bad-wash);
  }
  .late-hatch {
    fill: none;
    stroke: var(--_bad);
    stroke-width: 1.5;
  }
  .beyond {
    fill: none;
    stroke: var(--_bad);
    stroke-width: 3;
  }
  .booked {
    fill: none;
    stroke: var(--_ink);
    stroke-width: 2;
  }
  text.booked-text {
    font-weight: 700;
  }
  .mark-line {
    stroke: var(--_ink);
    stroke-dasharray: 1 2;
  }
  .dot {
    fill: var(--_ink);
  }
  text.piece {
    font-weight: 600;
    paint-order: stroke;
    stroke-width: 3px;
  }
  text.piece.usable {
    fill: var(--_on-usable);
    stroke: var(--_usable);
  }
  text.piece.lead-out {
    stroke: var(--_lead-out);
  }
  text.piece.margin {
    stroke: var(--_margin);
  }
  .halo {
    paint-order: stroke;
    stroke: var(--_paper);
    stroke-width: 3px;
  }
  @container (max-width: 66rem) {
    .head {
      display: none;
    }
    .row {
      grid-template-columns: repeat(5, minmax(0, 1fr));
      align-items: start;
      gap: 0.25rem 0.75rem;
      padding-block: 0.5rem;
    }
    .row .name {
      grid-column: span 2;
    }
    .row .label {
      position: static;
      display: block;
      width: auto;
      height: auto;
      clip-path: none;
      color: var(--_quiet);
      font-size: var(--_small);
    }
    .row .figure {
      text-align: start;
      white-space: normal;
    }
    .row .verdict {
      margin-top: 1rem;
    }
  }
  @container (max-width: 40rem) {
    .row {
      grid-template-columns: repeat(4, minmax(0, 1fr));
    }
    .row .name {
      grid-column: 1 / -1;
    }
    .row .booked,
    .row .margin,
    .row > :nth-child(4),
    .row > :nth-child(5) {
      grid-column: span 2;
    }
  }
  @container (max-width: 46rem) {
    .end-parts {
      grid-template-columns: minmax(0, 1fr);
    }
    .tables th,
    .tables td {
      padding-inline: 0.25rem;
    }
    .cut-offs .time .quiet {
      display: block;
      white-space: nowrap;
    }
    .helps .bars {
      display: none;
    }
    .cut-offs thead th {
      min-width: 3.75rem;
    }
    .bars {
      width: 6rem;
    }
  }
  @media (forced-colors: active) {
    .row[aria-selected='true'] {
      outline: 2px solid Highlight;
      outline-offset: -2px;
    }
    .bar.on-time,
    .filled {
      fill: CanvasText;
    }
    .late-ground {
      fill: Canvas;
    }
    .late-hatch,
    .bar.late,
    .booked,
    .mark-line,
    .aim,
    .beyond {
      stroke: CanvasText;
    }
    text.piece.usable {
      fill: Canvas;
      stroke: CanvasText;
    }
    text.piece:is(.lead-out, .margin) {
      fill: CanvasText;
      stroke: Canvas;
    }
    svg text:not(.piece) {
      fill: CanvasText;
    }
  }
`;
