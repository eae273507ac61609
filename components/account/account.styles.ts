import { css } from 'lit';
import { fieldStyles } from '../shared/fields/field.styles.js';
import { panelStyles } from '../shared/panel.styles.js';
import { entryStyles } from './entry.styles.js';
import { rowStyles } from './rows.styles.js';
import { sumStyles } from './sums.styles.js';

const frame = css`
  header {
    display: flex;
    flex-wrap: wrap;
    align-items: end;
    gap: 0.75rem 3rem;
  }
  h3 {
    margin-bottom: 0.25rem;
  }
  .told strong {
    margin-inline-end: 0.5rem;
    font-size: var(--_lead);
  }
  .told {
    padding-block: 0.375rem;
  }
  @media print {
    :host {
      container-type: normal;
    }
    summary {
      display: none;
    }
  }
  .then {
    margin-top: 0.375rem;
  }
  .then li {
    padding-block: 0.125rem;
    padding-inline-start: 0.75rem;
  }
`;

// Entry styles come after row styles, as the card layout of the train list must override them.
export const styles = [panelStyles, fieldStyles, frame, sumStyles, rowStyles, entryStyles];
