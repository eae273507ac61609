import { css } from 'lit';

/** The totals of the account, and their certainty and saved state. */
export const sumStyles = css`
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
    font-size: var(--_figure);
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
  @media print {
    .status {
      display: none;
    }
    .sums .most dd {
      font-size: 18pt;
    }
    .sums dd {
      font-size: 12pt;
    }
  }
`;
