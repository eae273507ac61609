import { css } from 'lit';

export const styles = css`
  :host {
    container-type: inline-size;
  }
  header,
  section,
  .empty {
    padding: 0.75rem;
  }
  header {
    display: flex;
    flex-wrap: wrap;
    align-items: end;
    justify-content: space-between;
    gap: 0.75rem 2rem;
  }
  h2 {
    font-size: var(--_head);
    font-weight: 650;
  }
  h3 {
    margin-bottom: 0.25rem;
    font-size: var(--_lead);
    font-weight: 650;
  }
  fieldset {
    display: flex;
    flex-wrap: wrap;
    align-items: end;
    gap: 0.375rem 0.75rem;
    min-width: 0;
    margin: 0;
    padding: 0;
    border: 0;
  }
  legend {
    padding: 0;
    font-weight: 650;
  }
  .field {
    display: inline-grid;
    gap: 0.125rem;
    min-width: 0;
  }
  .field label {
    color: var(--_quiet);
    font-size: var(--_small);
  }
  :is(input, select, textarea) {
    min-height: 2rem;
    max-width: 100%;
    padding: 0.125rem 0.5rem;
    border: 1px solid var(--_rule);
    border-radius: var(--_radius);
    background: var(--_raised);
    color: var(--_ink);
    font: inherit;
    font-variant-numeric: inherit;
  }
  .number input,
  .clock input {
    width: 5.5rem;
    text-align: end;
  }
  .words,
  .words input {
    width: 100%;
  }
  textarea {
    display: block;
    width: 100%;
    margin-block: 0.25rem;
    padding: 0.375rem 0.5rem;
    resize: vertical;
  }
  input:disabled {
    border-style: dashed;
    background: var(--_sunk);
  }
  [aria-invalid='true'] {
    border: 2px solid var(--_bad);
    background: var(--_bad-wash);
  }
  .problem {
    color: var(--_bad);
    font-size: var(--_small);
    text-align: start;
    white-space: normal;
  }
  fieldset .problem {
    flex-basis: 100%;
  }
  td .field .problem {
    max-width: 12rem;
  }
  .told strong {
    margin-inline-end: 0.5rem;
    font-size: var(--_lead);
  }
  .told {
    padding-block: 0.375rem;
  }
  .check {
    display: inline-grid;
    place-items: center;
    min-width: 2rem;
    min-height: 2rem;
    cursor: pointer;
  }
  input[type='checkbox'] {
    width: 1.375rem;
    min-height: 1.375rem;
    margin: 0;
    accent-color: var(--_act);
  }

  .sum-part {
    display: flex;
    flex-wrap: wrap;
    align-items: end;
    justify-content: space-between;
    gap: 0.5rem 2rem;
  }
  .status {
    min-width: 8rem;
    color: var(--_quiet);
    text-align: end;
  }
  .sums {
    display: flex;
    flex-wrap: wrap;
    align-items: end;
    gap: 0.5rem 2rem;
  }
  .sums dt {
    color: var(--_quiet);
  }
  .sums dd {
    font-size: var(--_head);
    font-weight: 650;
  }
  .sums .most dd {
    font-size: 2.25rem;
    line-height: 1.15;
    letter-spacing: -0.01em;
  }
  .sums .open dd {
    color: var(--_warn);
  }
  [aria-busy='true'] :is(.sums dd, .amount) {
    color: var(--_quiet);
  }
  .save {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 0.375rem 0.5rem;
  }

  .entries,
  .breakdowns {
    display: grid;
    grid-template-columns: minmax(0, 1fr);
  }
  .entries {
    border-block: 1px solid var(--_hair);
    background: var(--_raised);
  }
  .list {
    max-height: 22rem;
    margin-top: 0.375rem;
  }
  .list thead th {
    position: sticky;
    inset-block-start: 0;
    z-index: 1;
    background: var(--_raised);
  }
  .train-list :is(th, td) {
    vertical-align: middle;
  }
  .train-list tbody th {
    color: var(--_ink);
    overflow-wrap: anywhere;
  }
  .paste {
    margin-top: 0.5rem;
  }
  summary {
    width: fit-content;
    min-height: 1.5rem;
    color: var(--_act);
    cursor: pointer;
  }
  .standing-list li {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 0.25rem 0.5rem;
    padding-block: 0.375rem;
    border-bottom: 1px solid var(--_hair);
  }
  .standing-list strong {
    flex-basis: 100%;
  }
  .standing-list .number input {
    width: 4rem;
  }
  .add {
    display: flex;
    flex-wrap: wrap;
    align-items: end;
    gap: 0.5rem;
    margin-top: 0.5rem;
  }
  .add button {
    min-height: 2rem;
  }

  .account-rows {
    margin-top: 0.375rem;
    table-layout: fixed;
  }
  .account-rows th[scope='row'] {
    font-weight: 400;
    overflow-wrap: anywhere;
  }
  .account-rows thead th:nth-child(2) {
    width: 11rem;
  }
  .account-rows thead th:nth-child(3) {
    width: 15rem;
  }
  .account-rows thead th:nth-child(4) {
    width: 7rem;
  }
  .account-rows :is(.title, .formula, .small, .amount) {
    display: block;
  }
  .title {
    color: var(--_ink);
    font-weight: 600;
  }
  .formula {
    color: var(--_ink);
  }
  .small {
    color: var(--_quiet);
    font-size: var(--_small);
  }
  .amount {
    font-size: var(--_lead);
    font-weight: 600;
  }
  .beside .amount {
    color: var(--_quiet);
    font-weight: 400;
  }
  .tag {
    display: inline-block;
    margin-top: 0.25rem;
    padding: 0 0.375rem;
    border: 1px solid currentcolor;
    border-radius: var(--_radius);
    font-size: var(--_small);
    font-weight: 600;
  }
  .tag.good {
    color: var(--_good);
  }
  .tag.open {
    border-style: dashed;
    color: var(--_warn);
  }
  .inputs {
    margin-block: 0.25rem;
    display: flex;
    flex-wrap: wrap;
    gap: 0.125rem 1rem;
  }
  .inputs dt {
    color: var(--_quiet);
    font-size: var(--_small);
  }
  .breakdowns th[scope='row'] {
    color: var(--_ink);
    font-weight: 400;
    overflow-wrap: anywhere;
  }
  .notes li {
    padding-inline-start: 0.625rem;
    border-inline-start: 3px solid var(--_warn);
  }
  .notes li + li {
    margin-top: 0.25rem;
  }
  .narrow {
    display: none;
  }

  @container (max-width: 53.99rem) {
    .narrow {
      display: block;
      color: var(--_quiet);
      font-size: var(--_small);
    }
    .cards thead {
      position: absolute;
      overflow: hidden;
      width: 1px;
      height: 1px;
      clip-path: inset(50%);
    }
    .cards,
    .cards tbody {
      display: block;
    }
    .cards tr {
      display: grid;
      grid-template-columns: 1fr 1fr auto;
      column-gap: 0.75rem;
      padding-block: 0.625rem;
      border-bottom: 1px solid var(--_rule);
    }
    .cards :is(td, th) {
      display: block;
      padding: 0.125rem 0;
      border: 0;
      text-align: start;
      white-space: normal;
    }
    .cards tbody th {
      grid-column: 1 / 3;
    }
    .cards td:nth-child(2) {
      grid-area: 2 / 1;
    }
    .cards td:nth-child(3) {
      grid-area: 2 / 2 / auto / -1;
    }
    .cards td.figure {
      grid-area: 1 / 3;
      text-align: end;
    }
    .train-list :is(th, td) {
      padding-inline: 0.25rem;
    }
    .train-list input[type='text'] {
      width: 4.5rem;
    }
  }
  @container (min-width: 46rem) {
    .entries {
      grid-template-columns: minmax(0, 3fr) minmax(0, 2fr);
    }
    .breakdowns {
      grid-template-columns: repeat(2, minmax(0, 1fr));
    }
  }
  @media (forced-colors: active) {
    [aria-invalid='true'] {
      border-style: double;
      border-width: 4px;
    }
    :is(input, select, textarea) {
      border-color: CanvasText;
    }
    input:disabled {
      border-color: GrayText;
    }
  }
  @media print {
    :host {
      container-type: normal;
    }
    summary,
    .status {
      display: none;
    }
    fieldset .field {
      display: none;
    }
    .sums .most dd {
      font-size: 18pt;
    }
    .sums dd {
      font-size: 12pt;
    }
    .tag {
      margin-inline-start: 0.25rem;
      white-space: nowrap;
    }
    .account-rows thead th:nth-child(2) {
      width: 26mm;
    }
    .account-rows thead th:nth-child(3) {
      width: 40mm;
    }
    .account-rows thead th:nth-child(4) {
      width: 24mm;
    }
    .breakdowns {
      grid-template-columns: 1fr 1fr;
    }
  }
`;
