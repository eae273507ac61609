import { css } from 'lit';

export const styles = css`
  :host {
    container-type: inline-size;
  }
  .empty {
    padding: 0.75rem;
  }
  header {
    display: flex;
    flex-wrap: wrap;
    align-items: start;
    justify-content: space-between;
    gap: 0.5rem 1rem;
    padding: 0.75rem;
  }
  .problem {
    flex-basis: 100%;
    color: var(--_bad);
  }
  .name {
    flex: 1 1 16rem;
    min-width: 0;
  }
  h2 {
    font-size: var(--_head);
    font-weight: 650;
  }
  h3 {
    font-size: var(--_lead);
    font-weight: 650;
    overflow-wrap: anywhere;
  }

  .summary {
    display: flex;
    flex-wrap: wrap;
    gap: 0.5rem 1.75rem;
    padding: 0.75rem;
  }
  .summary strong {
    display: block;
    font-size: var(--_figure);
    font-weight: 650;
    line-height: 1.1;
  }
  .summary .late:not(.none) strong {
    color: var(--_bad);
  }
  .summary .none strong {
    color: var(--_quiet);
    font-weight: 400;
  }

  .state {
    display: inline-flex;
    align-items: center;
    gap: 0.3125rem;
    white-space: nowrap;
  }
  .state svg {
    flex: none;
  }
  .state.late {
    color: var(--_bad);
    font-weight: 650;
  }
  .state.met {
    color: var(--_good);
  }
  .state.missed-at-adding {
    color: var(--_warn);
  }
  .state.not-needed {
    color: var(--_quiet);
  }
  .shape.met {
    fill: var(--_good);
  }
  .shape.due {
    fill: var(--_paper);
    stroke: var(--_act);
    stroke-width: 2.5;
  }
  .shape.late {
    fill: var(--_bad);
  }
  .shape.missed-at-adding {
    fill: none;
    stroke: var(--_warn);
    stroke-width: 1.5;
  }
  .cross {
    stroke: var(--_warn);
    stroke-width: 1.5;
  }
  .shape.not-needed {
    stroke: var(--_quiet);
    stroke-width: 2;
  }
  .sign {
    fill: none;
    stroke: var(--_paper);
    stroke-width: 1.75;
  }

  .weeks {
    padding: 0.25rem 0.75rem 0.75rem;
  }
  .weeks h3 {
    margin-bottom: 0.25rem;
  }
  .strip {
    max-width: 100%;
  }
  .week {
    stroke: var(--_hair);
  }
  .week.named {
    stroke: var(--_rule);
    stroke-width: 0.75;
  }
  .base {
    stroke: var(--_rule);
  }
  .now {
    stroke: var(--_ink);
    stroke-width: 2;
  }
  svg text.soft {
    fill: var(--_quiet);
  }
  svg text.now-word {
    font-weight: 650;
  }

  .asked {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 0.5rem 1rem;
    padding-inline: 0.75rem;
  }
  .asked label {
    color: var(--_quiet);
  }
  .asked select,
  .class input {
    min-height: var(--_control);
    border: 1px solid var(--_rule);
    border-radius: var(--_radius);
    background: var(--_raised);
    color: var(--_ink);
    font: inherit;
  }
  .asked select {
    padding-inline: 0.375rem;
  }
  .count {
    margin-inline-start: 0.25rem;
    font-weight: 400;
  }

  .columns {
    display: grid;
    grid-template-columns: minmax(0, 1fr);
    gap: 1.5rem 2rem;
    padding: 0.75rem;
  }
  .class h3 {
    margin-bottom: 0.25rem;
  }
  .class input {
    width: 4.5rem;
    text-align: end;
  }
  th[scope='row'] {
    color: var(--_ink);
    font-weight: 600;
  }
  tr:is(.met, .not-needed) th[scope='row'] {
    font-weight: 400;
  }
  th[scope='row'] {
    overflow-wrap: anywhere;
  }
  .by,
  .note {
    color: var(--_quiet);
    font-weight: 400;
  }
  .note {
    display: block;
    font-size: var(--_small);
  }
  .sources {
    padding: 0.75rem;
  }
  .sources summary {
    width: fit-content;
    color: var(--_act);
    cursor: pointer;
  }
  .sources dl > div {
    margin-top: 0.375rem;
  }
  .sources dt {
    font-weight: 600;
  }
  .sources dd {
    color: var(--_quiet);
    overflow-wrap: anywhere;
  }
  tr.late td.left {
    color: var(--_bad);
    font-weight: 650;
  }
  :is(.due-cell, .state-cell) {
    white-space: nowrap;
  }
  .clock {
    color: var(--_quiet);
  }
  .due-list .window-cell .quiet {
    font-size: var(--_small);
  }

  /* On a narrow screen a row of the table becomes a small card. */
  @container (max-width: 39.99rem) {
    .due-list thead {
      position: absolute;
      overflow: hidden;
      width: 1px;
      height: 1px;
      clip-path: inset(50%);
    }
    .due-list tr {
      display: grid;
      grid-template-columns: minmax(0, 1fr) auto;
      gap: 0.125rem 0.5rem;
      padding-block: 0.5rem;
      border-bottom: 1px solid var(--_hair);
    }
    .due-list :is(td, th) {
      padding: 0;
      border: 0;
    }
    .due-list th[scope='row'] {
      grid-column: 1 / -1;
      order: -1;
    }
    .due-list .window-cell {
      grid-column: 1 / -1;
    }
  }
  @container (min-width: 80rem) {
    .columns {
      grid-template-columns: minmax(0, 2fr) minmax(0, 1fr);
    }
  }
  @media (forced-colors: active) {
    .shape:is(.met, .due, .late, .missed-at-adding, .not-needed) {
      stroke: CanvasText;
      fill: Canvas;
    }
    .shape:is(.met, .late) {
      fill: CanvasText;
    }
    .sign {
      stroke: Canvas;
    }
    .cross,
    .base,
    .now {
      stroke: CanvasText;
    }
    .week {
      stroke: GrayText;
    }
    svg text,
    svg text.soft {
      fill: CanvasText;
    }
  }
  @media print {
    .save {
      display: none;
    }
    /* Room after the last row would begin a sheet of its own. */
    .columns {
      display: block;
      padding: 0;
    }
    .class {
      margin-top: 4mm;
    }
    .class input {
      border: 0;
      text-align: start;
    }
    :is(header, .summary, .weeks, .sources) {
      padding-inline: 0;
    }
    .due-list .window-cell .quiet {
      display: none;
    }
    .note {
      display: inline;
    }
    .due-list :is(td, thead th) {
      width: 1%;
      white-space: nowrap;
    }
    .due-list :is(td, th):last-child {
      width: auto;
    }
    .sources:not([open]) {
      display: none;
    }
    :is(th, td) {
      padding-block: 0.3mm;
    }
  }
`;
