import { css } from 'lit';
import { cardStyles } from './cards.styles.js';
import { exampleStyles } from './example.js';
import { fieldStyles } from './fields/field.styles.js';
import { panelStyles } from './panel.styles.js';
import { strikeStyles } from './strike.styles.js';

const layout = css`
  h3 {
    margin-bottom: 0.375rem;
  }
  section > * + h3 {
    margin-top: 1rem;
  }
  section > .fields,
  section > table,
  section > .picture {
    margin-block: 0.5rem;
  }
  figure {
    margin-bottom: 0.5rem;
  }
  figcaption {
    font-weight: 600;
  }
  section > p {
    max-width: 90ch;
    margin-bottom: 0.375rem;
  }
  .figures {
    display: flex;
    flex-wrap: wrap;
    gap: 0.5rem 1.75rem;
    padding: 0.75rem;
  }
  .figures strong {
    display: block;
    font-size: var(--_figure);
    font-weight: 650;
    line-height: 1.1;
  }
  .figures .bad strong,
  .bad-text {
    color: var(--_bad);
    font-weight: 650;
  }
  .good-text {
    color: var(--_good);
  }
  .fields {
    display: flex;
    flex-wrap: wrap;
    gap: 0.5rem 1rem;
    align-items: end;
  }
  .field {
    display: inline-flex;
    flex-direction: column;
    gap: 0.125rem;
    color: var(--_quiet);
    font-size: var(--_small);
  }
  .field.check {
    flex-direction: row;
    align-items: center;
    gap: 0.5rem;
    min-height: var(--_control);
    color: var(--_ink);
    font-size: var(--_text);
  }
  .entry {
    display: inline-flex;
    align-items: center;
    gap: 0.375rem;
  }
  input,
  select {
    padding: 0.25rem 0.375rem;
    font-size: var(--_text);
  }
  input[type='number'] {
    width: 5.5rem;
    text-align: end;
  }
  input[type='checkbox'] {
    width: 1.5rem;
    min-height: 1.5rem;
    margin: 0;
    accent-color: var(--_act);
  }
  .source {
    display: block;
    color: var(--_quiet);
    font-size: var(--_small);
    font-weight: 400;
  }
  .choice {
    margin-bottom: 0.5rem;
  }
  th[scope='row'] {
    color: var(--_ink);
    font-weight: 600;
    overflow-wrap: anywhere;
  }
  td {
    overflow-wrap: anywhere;
  }
  @media print {
    button,
    .fields {
      display: none;
    }
  }
`;

/** The elements of people, neighbours and weather: panels of pictures, tables and fields with their sources. */
export const siteStyles = [
  panelStyles,
  fieldStyles,
  exampleStyles,
  layout,
  strikeStyles,
  cardStyles,
];
