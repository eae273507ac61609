import { css } from 'lit';

/** What a person enters: times, trains, standing plant and labour. */
export const entryStyles = css`
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
  .check {
    display: inline-grid;
    place-items: center;
    min-width: 2rem;
    min-height: var(--_control);
    cursor: pointer;
  }
  input[type='checkbox'] {
    width: 1.375rem;
    min-height: 1.375rem;
    margin: 0;
    accent-color: var(--_act);
  }
  .entries {
    display: grid;
    grid-template-columns: minmax(0, 1fr);
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
    min-height: var(--_control);
  }
  @container (max-width: 53.99rem) {
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
  }
  @media (forced-colors: active) {
    input:disabled {
      border-color: GrayText;
    }
  }
  @media print {
    fieldset .field {
      display: none;
    }
  }
`;
