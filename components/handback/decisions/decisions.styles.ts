import { css } from 'lit';

/** Where a planner places go/no-go points and says what cannot be undone. */
export const decisionStyles = css`
  .decision-form input.clock {
    width: 5.5rem;
  }
  .decision-form {
    grid-column: 1 / -1;
  }
  .decision-form :is(input, select) {
    min-height: var(--_control);
    max-width: 100%;
    padding: 0.25rem 0.375rem;
    border: 1px solid var(--_rule);
    border-radius: var(--_radius);
    background: var(--_raised);
    color: var(--_ink);
    font: inherit;
  }
  .decision-form input[type='number'] {
    width: 5.5rem;
    text-align: end;
  }
  .decision-form input[type='checkbox'] {
    width: 1.5rem;
    min-height: 1.5rem;
    margin: 0;
    accent-color: var(--_act);
  }
  .points li {
    display: flex;
    flex-wrap: wrap;
    gap: 0.25rem 1rem;
    align-items: center;
    padding-block: 0.375rem;
    border-bottom: 1px solid var(--_hair);
    overflow-wrap: anywhere;
  }
  .points .name {
    display: flex;
    flex: 1 1 14rem;
    flex-direction: column;
    min-width: 0;
  }
  .points .change {
    flex-basis: 100%;
    min-width: 0;
  }
  .points .change summary {
    width: fit-content;
    padding-block: 0.125rem;
  }
  .add-point,
  .change-point {
    display: flex;
    flex-wrap: wrap;
    gap: 0.5rem 0.75rem;
    align-items: end;
    min-width: 0;
    padding-block: 0.5rem 0.75rem;
  }
  .change-point {
    padding-inline-start: 0.75rem;
    border-inline-start: 3px solid var(--_act);
  }
  :is(.add-point, .change-point) label {
    display: flex;
    flex-direction: column;
    gap: 0.125rem;
    max-width: 100%;
    color: var(--_quiet);
    font-size: var(--_small);
  }
  :is(.add-point, .change-point) label.long {
    flex: 1 1 14rem;
    max-width: 26rem;
  }
  :is(.add-point, .change-point) [aria-invalid='true'] {
    border: 2px solid var(--_bad);
  }
  :is(.add-point, .change-point) button {
    min-height: var(--_control);
  }
  .problem {
    flex-basis: 100%;
    color: var(--_bad);
    font-weight: 600;
  }
  .problem:empty {
    display: none;
  }
  @container (max-width: 36rem) {
    .decision-form table :is(th, td) {
      display: block;
      border: 0;
    }
    .decision-form thead {
      position: absolute;
      width: 1px;
      height: 1px;
      overflow: hidden;
      clip-path: inset(50%);
    }
    .decision-form tr {
      display: block;
      padding-block: 0.375rem;
      border-bottom: 1px solid var(--_hair);
    }
    .decision-form td::before {
      content: attr(data-label) ' ';
      color: var(--_quiet);
    }
  }
`;
