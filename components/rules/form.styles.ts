import { css } from 'lit';

/** Fields with their words above them and, where something is wrong, the way to mend it below. */
export const formStyles = css`
  .fields {
    display: flex;
    flex-wrap: wrap;
    align-items: start;
    gap: 0.375rem 0.75rem;
    min-width: 0;
  }
  .field {
    display: grid;
    grid-auto-rows: min-content;
    min-width: 0;
    margin: 0;
    padding: 0;
    border: 0;
  }
  .field.long {
    flex: 1 1 15rem;
  }
  .field.short {
    flex: 0 1 4.75rem;
  }
  .field.clock {
    flex: 0 1 5.5rem;
  }
  .field.choice {
    flex: 1 1 7.5rem;
    max-width: 18rem;
  }
  .row .field.source {
    flex: 1.5 1 11rem;
  }
  .plain-fields .field.short {
    flex-basis: 9.5rem;
  }
  .events .field.short {
    flex-basis: 8.5rem;
  }
  .events .field.choice {
    flex-basis: 13rem;
  }
  .spread {
    display: flex;
    flex: 0 1 auto;
    flex-wrap: wrap;
    max-width: 100%;
    gap: 0.375rem;
  }
  .spread .field {
    width: 4.75rem;
  }
  .field:is(.short, .clock):has(.wrong) {
    flex-basis: 14rem;
    width: 14rem;
    max-width: 100%;
  }
  .label {
    padding: 0;
    color: var(--_quiet);
    font-size: var(--_small);
  }
  input[type='text'],
  select {
    width: 100%;
    min-width: 0;
    min-height: var(--_control);
    margin: 0;
    padding: 0.125rem 0.375rem;
    border: 1px solid var(--_rule);
    border-radius: var(--_radius);
    background: var(--_raised);
    color: var(--_ink);
    font: inherit;
    font-variant-numeric: inherit;
  }
  .short input {
    text-align: end;
  }
  input[type='text']:hover,
  select:hover {
    border-color: var(--_act);
  }
  [aria-invalid='true'] {
    border-color: var(--_bad) !important;
    border-width: 2px !important;
    background: var(--_bad-wash) !important;
  }
  .wrong {
    max-width: 22rem;
    margin-top: 0.125rem;
    color: var(--_bad);
    font-size: var(--_small);
    font-weight: 550;
  }
  .hint {
    color: var(--_quiet);
    font-size: var(--_small);
  }
  .short .hint {
    text-align: end;
  }
  .boxes {
    display: flex;
    flex-wrap: wrap;
    gap: 0 0.875rem;
    align-items: center;
    min-height: var(--_control);
  }
  .box {
    display: inline-flex;
    align-items: center;
    gap: 0.3125rem;
    min-height: var(--_control);
    min-width: 1.5rem;
    cursor: pointer;
  }
  .box input {
    appearance: none;
    flex: none;
    width: 1.125rem;
    height: 1.125rem;
    margin: 0;
    border: 1.5px solid var(--_rule);
    border-radius: 2px;
    background: var(--_raised);
    cursor: pointer;
  }
  .box input:checked {
    border-color: var(--_act);
    background: linear-gradient(var(--_act) 0 0) center / 0.625rem 0.625rem no-repeat var(--_raised);
  }
  .choose .boxes {
    align-self: end;
  }
  .icon {
    display: grid;
    place-items: center;
    width: 1.75rem;
    min-height: var(--_control);
    padding: 0;
  }
  .icon .mark {
    fill: none;
    stroke: currentcolor;
    stroke-width: 1.75;
    stroke-linecap: round;
    stroke-linejoin: round;
  }
  @media (forced-colors: active) {
    .box input {
      appearance: auto;
    }
    [aria-invalid='true'] {
      outline: 2px dashed Mark;
    }
  }
`;
