import { css } from 'lit';

export const styles = css`
  :host {
    container-type: inline-size;
  }
  .empty {
    padding: 0.375rem 0.75rem;
  }
  .top {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 0.25rem 1rem;
    padding: 0.375rem 0.75rem;
  }
  .key {
    display: flex;
    flex-wrap: wrap;
    gap: 0.25rem 0.875rem;
    flex: 1;
    color: var(--_quiet);
    font-size: var(--_small);
  }
  .key li {
    display: flex;
    align-items: center;
    gap: 0.375rem;
  }
  .axis,
  .row {
    display: grid;
    grid-template-columns: 15.5rem minmax(0, 1fr) 11rem;
    column-gap: 0.75rem;
    padding-inline: 0.75rem;
  }
  .axis {
    position: sticky;
    top: 0;
    z-index: 1;
    border-bottom: 1px solid var(--_rule);
    background: var(--_raised);
    color: var(--_quiet);
    font-size: var(--_small);
    align-items: end;
  }
  .axis text {
    fill: var(--_quiet);
  }
  .axis .figure {
    padding-bottom: 0.125rem;
  }
  .row {
    align-items: center;
    border-bottom: 1px solid var(--_hair);
    cursor: pointer;
  }
  .row:hover {
    background: var(--_act-wash);
  }
  .row[aria-selected='true'] {
    background: var(--_act-wash);
    box-shadow: inset 4px 0 0 var(--_act);
  }
  .row[aria-selected='true']:dir(rtl) {
    box-shadow: inset -4px 0 0 var(--_act);
  }
  .row:focus-visible {
    outline-offset: -2px;
  }
  .row {
    scroll-margin-block-start: 1.75rem;
  }
  .many {
    position: relative;
  }
  .many > .row {
    position: absolute;
    inset-inline: 0;
    contain: strict;
  }
  .many .name {
    overflow: hidden;
  }
  :host(:dir(rtl)) .name .title {
    text-align: right;
  }
  .many .title,
  .many .status,
  .many .hours .outcome {
    overflow: hidden;
    text-overflow: ellipsis;
    white-space: nowrap;
  }
  .name {
    display: grid;
    grid-template-columns: auto minmax(0, 1fr);
    column-gap: 0.5rem;
    align-items: baseline;
    padding-block: 0.1875rem;
    line-height: 1.25;
  }
  .name strong {
    font-weight: 650;
  }
  .name strong {
    min-width: 2rem;
  }
  .name .status {
    grid-column: 2;
    color: var(--_quiet);
    font-size: var(--_small);
  }
  .hours {
    padding-block: 0.25rem;
    line-height: 1.2;
    text-align: end;
    white-space: nowrap;
  }
  /* A window's outcome may be longer than its figures, above all in other languages. */
  .hours .outcome {
    white-space: normal;
    text-wrap: balance;
  }
  :host(:dir(rtl)) .hours {
    direction: ltr;
    text-align: left;
  }
  .hours strong {
    font-size: var(--_lead);
    font-weight: 600;
  }
  .hours > span {
    color: var(--_quiet);
    font-size: var(--_small);
  }
  .withdrawn .name strong,
  .withdrawn .title {
    text-decoration: line-through;
  }
  .tick {
    stroke: var(--_hair);
  }
  .tick.midnight {
    stroke: var(--_rule);
  }
  text.date,
  text.end {
    fill: var(--_quiet);
  }
  text.inside {
    font-weight: 600;
  }
  text.inside.usable {
    fill: var(--_on-usable);
  }
  .edge.free {
    stroke: var(--_usable);
    stroke-width: 1.5;
  }
  .piece rect {
    fill: var(--_usable);
    stroke: var(--_raised);
  }
  .piece text {
    fill: var(--_on-usable);
    font-weight: 600;
  }
  text.week {
    font-weight: 650;
  }
  .new-week {
    border-top: 1px solid var(--_rule);
  }
  .hours .outcome {
    display: block;
  }
  .hours .outcome.harm {
    color: var(--_bad);
    font-weight: 600;
  }
  .outline {
    fill: none;
    stroke: var(--_rule);
  }
  .outline.withdrawn {
    stroke-dasharray: 4 3;
  }
  .change {
    stroke: var(--_act);
    stroke-width: 2;
  }
  text.change-text {
    fill: var(--_act);
    font-weight: 650;
    stroke: none;
  }
  @media (forced-colors: active) {
    .change {
      stroke: CanvasText;
    }
    text.change-text {
      fill: CanvasText;
    }
  }
  .halo {
    paint-order: stroke;
    stroke: var(--_raised);
    stroke-width: 3px;
  }
  [aria-selected='true'] .halo,
  .row:hover .halo {
    stroke: var(--_act-wash);
  }
  .sheet tbody .figure {
    min-width: 5.5rem;
    white-space: normal;
  }
  .sheet th[scope='row'] {
    min-width: 9rem;
    color: var(--_ink);
    font-weight: 500;
  }
  .sheet .status {
    display: block;
    font-size: var(--_small);
    font-weight: 400;
  }
  /* A long table scrolls under its headings; columns keep their width while rows are added and removed. */
  .scroll:has(> .long) {
    max-block-size: 24rem;
  }
  .long {
    table-layout: fixed;
    min-width: 76rem;
  }
  .long thead th {
    position: sticky;
    inset-block-start: 0;
    background: var(--_raised);
    box-shadow: inset 0 -1px 0 var(--_rule);
    line-height: 1.2;
    vertical-align: bottom;
  }
  .long tbody :is(th, td) {
    white-space: nowrap;
  }
  .long tbody th {
    overflow: hidden;
    text-overflow: ellipsis;
  }
  .long th:nth-child(2) {
    width: 19rem;
  }
  .long th:nth-child(1) {
    width: 15rem;
  }
  .long thead th:nth-child(n + 4) {
    white-space: normal;
  }
  .long tbody tr:not(.gap) {
    height: 1.875rem;
  }
  @media print {
    :host {
      page: possession-window;
      container-type: normal;
    }
    .piece rect {
      stroke: #000;
    }
    .left-out {
      margin-bottom: 2mm;
      font-weight: 650;
    }
  }
  @container (max-width: 46rem) {
    .axis,
    .row {
      grid-template-columns: minmax(0, 1fr) auto;
    }
    .axis > :first-child {
      display: none;
    }
    .axis > .figure {
      display: none;
    }
    .axis .drawing,
    .row .drawing {
      grid-column: 1 / -1;
      grid-row: 2;
    }
    .name {
      display: block;
    }
    .hours strong {
      display: inline;
    }
    .many .row {
      grid-template-rows: 2.75rem auto;
    }
    .many .name {
      display: -webkit-box;
      -webkit-box-orient: vertical;
      -webkit-line-clamp: 2;
      max-height: 2.25rem;
      padding: 0;
    }
    .many :is(.title, .status) {
      white-space: normal;
    }
  }
  @media (forced-colors: active) {
    .row[aria-selected='true'] {
      outline: 2px solid Highlight;
      outline-offset: -2px;
    }
    text.inside.usable,
    .piece text {
      fill: Canvas;
    }
    .piece rect {
      fill: CanvasText;
      stroke: Canvas;
    }
  }
`;
