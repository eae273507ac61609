import { css } from 'lit';

/** Elements made of padded parts under headings, with what opens; each lays itself out by its own width. */
export const panelStyles = css`
  :host {
    container-type: inline-size;
  }
  header,
  .head,
  section,
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
  summary {
    width: fit-content;
    min-height: 1.5rem;
    color: var(--_act);
    cursor: pointer;
  }
`;
