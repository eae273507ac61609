import { css } from 'lit';

/** The windows as rows of figures; each figure under its own name where the element is narrow. */
export const windowListStyles = css`
  .head,
  .row {
    display: grid;
    grid-template-columns:
      minmax(8rem, 1fr) 9rem 12.5rem minmax(6.5rem, 13rem) 9.5rem
      repeat(4, minmax(3.75rem, 5rem));
    column-gap: 0.75rem;
    align-items: baseline;
    padding-inline: 0.75rem;
  }
  .head {
    padding-block: 0.375rem;
    border-bottom: 1px solid var(--_rule);
    background: var(--_raised);
    color: var(--_quiet);
    font-size: var(--_small);
    align-items: end;
  }
  .head .figure {
    white-space: normal;
  }
  .row {
    padding-block: 0.375rem;
    border-bottom: 1px solid var(--_hair);
    cursor: pointer;
  }
  /* A time on another day carries its date, above it. */
  .row .figure {
    white-space: normal;
  }
  .row:hover,
  .row[aria-selected='true'] {
    background: var(--_act-wash);
  }
  .row[aria-selected='true'] {
    box-shadow: inset 4px 0 0 var(--_act);
  }
  .row:focus-visible {
    outline-offset: -2px;
  }
  .row .label {
    position: absolute;
    width: 1px;
    height: 1px;
    overflow: hidden;
    clip-path: inset(50%);
  }
  .row strong {
    font-weight: 650;
  }
  .row .name span {
    overflow-wrap: anywhere;
  }
  .verdict {
    display: inline-flex;
    align-items: baseline;
    gap: 0.375rem;
    font-weight: 650;
    white-space: nowrap;
  }
  .need {
    display: block;
    text-wrap: balance;
  }
  .mark {
    flex: none;
    fill: currentColor;
    align-self: center;
  }
  .mark .ring {
    fill: none;
    stroke: currentColor;
    stroke-width: 1.5;
  }
  .verdict.held {
    color: var(--_good);
  }
  .verdict:is(.eaten, .chance-low) {
    color: var(--_warn);
  }
  .verdict.overrun {
    color: var(--_bad);
  }
  @container (max-width: 66rem) {
    .head {
      display: none;
    }
    .row {
      grid-template-columns: repeat(5, minmax(0, 1fr));
      align-items: start;
      gap: 0.25rem 0.75rem;
      padding-block: 0.5rem;
    }
    .row .name {
      grid-column: span 2;
    }
    .row .label {
      position: static;
      display: block;
      width: auto;
      height: auto;
      clip-path: none;
      color: var(--_quiet);
      font-size: var(--_small);
    }
    .row .figure {
      text-align: start;
      white-space: normal;
    }
    .row .verdict {
      margin-top: 1rem;
    }
  }
  @container (max-width: 40rem) {
    .row {
      grid-template-columns: repeat(4, minmax(0, 1fr));
    }
    .row .name {
      grid-column: 1 / -1;
    }
    .row .booked,
    .row .margin,
    .row > :nth-child(4),
    .row > :nth-child(5) {
      grid-column: span 2;
    }
  }
  @media (forced-colors: active) {
    .row[aria-selected='true'] {
      outline: 2px solid Highlight;
      outline-offset: -2px;
    }
  }
`;
