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
    align-items: baseline;
    gap: 0 1.25rem;
    padding: 0.75rem 0.75rem 0.25rem;
  }
  h2 {
    font-size: var(--_head);
    font-weight: 650;
  }
  h3 {
    display: flex;
    flex-wrap: wrap;
    align-items: baseline;
    gap: 0 0.5rem;
    margin-bottom: 0.375rem;
    font-size: var(--_lead);
    font-weight: 650;
  }
  h3 svg {
    align-self: center;
  }
  h3 .quiet {
    font-size: var(--_small);
    font-weight: 400;
  }
  h4 {
    margin: 0.875rem 0 0.125rem;
    font-size: var(--_text);
    font-weight: 650;
  }
  .halves {
    display: grid;
    grid-template-columns: minmax(0, 1fr);
  }
  .form > section,
  .beside > section {
    padding: 0.75rem;
    border-top: 1px solid var(--_rule);
  }
  .beside {
    background: var(--_raised);
  }
  .tip {
    padding: 0 0.75rem 0.625rem;
    font-size: var(--_small);
  }
  .none {
    margin-bottom: 0.375rem;
  }
  .row {
    display: grid;
    grid-template-columns: 1.25rem minmax(0, 1fr) auto;
    gap: 0.5rem;
    padding-block: 0.5rem;
    border-top: 1px solid var(--_hair);
  }
  .row:focus-within {
    box-shadow: inset 3px 0 0 var(--_act);
  }
  .row .number {
    padding-top: 1.25rem;
    color: var(--_quiet);
    text-align: end;
  }
  .controls {
    display: flex;
    gap: 0.25rem;
    align-items: start;
    padding-top: 1.0625rem;
  }
  .event-files {
    display: flex;
    flex-wrap: wrap;
    align-items: end;
    gap: 0.5rem 1rem;
    margin-top: 0.75rem;
  }
  .event-files .bring-in {
    display: grid;
    gap: 0.25rem;
  }
  .event-files .said {
    flex-basis: 100%;
    overflow-wrap: anywhere;
  }
  .add {
    margin-top: 0.375rem;
  }
  .lost {
    color: var(--_bad);
    font-weight: 600;
  }
  .gained {
    color: var(--_good);
    font-weight: 600;
  }

  .sketch {
    margin-top: 0.625rem;
  }
  .line {
    display: grid;
    grid-template-columns: minmax(8rem, 15rem) minmax(0, 1fr);
    column-gap: 0.75rem;
    align-items: start;
  }
  .line .name {
    padding-block: 0.1875rem;
    line-height: 1.25;
    overflow-wrap: anywhere;
  }
  .line .quiet {
    display: block;
    font-size: var(--_small);
  }
  .laid .drawing {
    height: 100%;
    min-height: 20px;
  }
  .laid .line + .line {
    border-top: 1px solid var(--_hair);
  }
  .line.axis {
    border-bottom: 1px solid var(--_rule);
  }
  .line.axis text {
    fill: var(--_quiet);
  }
  .line.whole {
    border-bottom: 1px solid var(--_hair);
  }
  .line.absent .name {
    color: var(--_quiet);
  }
  .inside {
    fill: var(--_on-usable);
    font-weight: 600;
  }
  .post {
    stroke: var(--_usable);
    stroke-dasharray: 2 3;
  }
  .whisker {
    fill: none;
    stroke-width: 1.5;
  }
  .whisker.lead-in {
    stroke: var(--_lead-in-line);
  }
  .whisker.lead-out {
    stroke: var(--_lead-out-line);
  }
  .outcome {
    margin-top: 0.375rem;
    font-size: var(--_lead);
  }

  .acts,
  .kinds {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 0.375rem;
    margin-bottom: 0.5rem;
  }
  .kinds button[aria-pressed='true'] {
    border-color: var(--_act);
    background: var(--_act-wash);
    box-shadow: inset 0 -2px 0 var(--_act);
  }
  .kinds .count {
    color: var(--_quiet);
  }
  .told {
    margin-bottom: 0.25rem;
    font-size: var(--_lead);
    font-weight: 550;
    text-wrap: pretty;
  }
  .windows th[scope='row'] {
    color: var(--_ink);
    font-weight: 500;
    white-space: nowrap;
  }
  .windows .quiet {
    margin-inline-start: 0.375rem;
    font-size: var(--_small);
    font-weight: 400;
  }
  .bar-cell {
    vertical-align: middle;
  }
  .change-bar .loss {
    fill: none;
    stroke: var(--_bad);
    stroke-width: 1.5;
    stroke-dasharray: 3 2;
  }
  .change-bar .gain {
    fill: var(--_good-wash);
    stroke: var(--_good);
    stroke-width: 1.5;
  }
  .more {
    margin-top: 0.375rem;
  }
  .packages > li {
    padding-block: 0.375rem;
    border-top: 1px solid var(--_hair);
  }
  .package {
    display: flex;
    flex-wrap: wrap;
    gap: 0 0.75rem;
    align-items: baseline;
  }
  .links,
  .links ul {
    display: flex;
    flex-wrap: wrap;
    gap: 0 0.75rem;
    align-items: baseline;
  }
  .links .plain,
  .windows .plain,
  .package .plain {
    min-width: 1.5rem;
    min-height: 1.5rem;
  }
  @container (min-width: 68rem) {
    .halves {
      grid-template-columns: minmax(0, 8fr) minmax(0, 7fr);
    }
    .beside {
      position: sticky;
      inset-block-start: 0;
      align-self: start;
      max-block-size: 100vh;
      overflow: auto;
      border-inline-start: 1px solid var(--_rule);
    }
  }
  @container (max-width: 40rem) {
    .line {
      grid-template-columns: minmax(0, 1fr);
    }
    .row {
      grid-template-columns: minmax(0, 1fr);
      gap: 0.25rem;
    }
    .row .number {
      display: none;
    }
    .controls {
      order: -1;
      justify-content: end;
      padding-top: 0;
    }
    .picture-head,
    .bar-cell {
      display: none;
    }
  }
  @media print {
    .halves {
      display: block;
    }
    .beside {
      position: static;
      max-block-size: none;
      overflow: visible;
      border: 0;
    }
    .row {
      break-inside: avoid;
    }
    .controls,
    .add,
    .acts,
    .more,
    .tip {
      display: none;
    }
  }
  @media (forced-colors: active) {
    .post,
    .whisker.lead-in,
    .whisker.lead-out,
    .change-bar .loss,
    .change-bar .gain {
      stroke: CanvasText;
    }
    .inside {
      fill: Canvas;
    }
    .kinds button[aria-pressed='true'] {
      outline: 2px solid Highlight;
      outline-offset: -3px;
    }
  }
`;
