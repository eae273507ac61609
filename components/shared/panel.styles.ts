import { css } from 'lit';

/** Headings, and an element that lays itself out by its own width. */
export const headingStyles = css`
  :host {
    container-type: inline-size;
  }
  header,
  .empty {
    padding: 0.75rem;
  }
  h2 {
    font-size: var(--_head);
    font-weight: 650;
  }
  h3 {
    font-size: var(--_lead);
    font-weight: 650;
  }
`;

/** The same, made of padded sections, with parts that open. */
export const panelStyles = [
  headingStyles,
  css`
    .head,
    section {
      padding: 0.75rem;
    }
    summary {
      width: fit-content;
      min-height: 1.5rem;
      color: var(--_act);
      cursor: pointer;
    }
  `,
];
