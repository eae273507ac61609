import { css } from 'lit';

/** The narrow panel and what stands in it. */
export const panelStyles = css`
  .change {
    margin-top: 0.75rem;
  }
  .change summary {
    color: var(--_act);
    cursor: pointer;
    font-weight: 600;
  }
  .change form,
  .move form,
  .move {
    display: grid;
    gap: 0.5rem;
    padding-block: 0.5rem;
  }
  .change label {
    display: grid;
    grid-template-columns: 4rem minmax(0, 1fr);
    align-items: center;
  }
  .move {
    margin-bottom: 0.75rem;
    border-bottom: 2px solid var(--_rule);
  }
  .ahead {
    display: grid;
    gap: 0.25rem;
    padding: 0.375rem 0.5rem;
    border-inline-start: 4px solid var(--_rule);
    background: var(--_sunk);
    line-height: 1.4;
  }
  .ahead li {
    padding-block: 0.125rem;
  }
  .move h2 {
    font-size: var(--_lead);
    font-weight: 650;
  }
  .change input,
  .files input,
  .move input,
  aside select {
    min-width: 0;
    min-height: var(--_control);
    padding: 0.25rem 0.5rem;
    border: 1px solid var(--_rule);
    border-radius: var(--_radius);
    background: var(--_raised);
    color: inherit;
    font: inherit;
  }
  aside {
    position: relative;
    grid-area: side;
    overflow: auto;
    padding: 0.75rem;
    border-inline-start: 1px solid var(--_rule);
  }
  aside possession-ledger ~ possession-why {
    margin-top: 1rem;
    padding-top: 0.75rem;
    border-top: 2px solid var(--_rule);
  }
  .noted {
    padding: 0.375rem 0.5rem;
    border-inline-start: 4px solid var(--_warn);
    background: var(--_sunk);
  }
  .files {
    display: grid;
    gap: 0.5rem;
    margin-bottom: 0.75rem;
    padding-bottom: 0.75rem;
    border-bottom: 2px solid var(--_rule);
  }
  .files h2 {
    font-size: var(--_lead);
    font-weight: 650;
  }
  .files h2:not(:first-child) {
    margin-top: 0.5rem;
  }
  .files form {
    display: grid;
    gap: 0.375rem;
    justify-items: start;
  }
  .files label {
    display: grid;
    width: 100%;
    gap: 0.125rem;
    color: var(--_quiet);
    font-size: var(--_small);
  }
  .files li {
    padding-block: 0.375rem;
    border-bottom: 1px solid var(--_hair);
  }
  .acts {
    display: flex;
    flex-wrap: wrap;
    gap: 0.375rem;
    margin-top: 0.25rem;
  }
  .up {
    display: none;
  }
  .overview {
    display: grid;
    gap: 0.5rem;
  }
  .overview h2,
  .help h2 {
    font-size: var(--_lead);
    font-weight: 650;
  }
  .dates li,
  .left li {
    display: grid;
    grid-template-columns: 1.125rem minmax(0, 1fr) auto;
    gap: 0 0.25rem;
    padding-block: 0.375rem;
    border-bottom: 1px solid var(--_hair);
  }
  .left li {
    display: block;
  }
  .dates .quiet {
    grid-column: 2 / -1;
    font-size: var(--_small);
  }
  .left .quiet {
    display: block;
    font-size: var(--_small);
  }
  .dates .met .mark {
    color: var(--_good);
  }
  .dates .missed :is(.mark, .figure),
  .harm {
    color: var(--_bad);
    font-weight: 600;
  }
  .sentence.harm {
    color: inherit;
  }
  .help {
    display: grid;
    gap: 0.5rem;
    line-height: 1.5;
  }
  .help h2:not(:first-child) {
    margin-top: 0.5rem;
  }
  .help ol {
    list-style: decimal;
    padding-inline-start: 1.25rem;
  }
  .help dl {
    display: grid;
    grid-template-columns: 10rem minmax(0, 1fr);
    gap: 0.25rem 0.75rem;
  }
  .help dt {
    font-weight: 600;
  }
  .help ul {
    list-style: disc;
    padding-inline-start: 1.25rem;
  }
  kbd {
    padding: 0 0.25rem;
    border: 1px solid var(--_rule);
    border-radius: var(--_radius);
    font: inherit;
  }
  .commands {
    display: grid;
    gap: 0.5rem;
  }
  .commands input {
    min-height: var(--_control);
    padding: 0.25rem 0.5rem;
    border: 1px solid var(--_rule);
    border-radius: var(--_radius);
    background: var(--_raised);
    color: inherit;
    font: inherit;
  }
  .commands li {
    padding: 0.375rem 0.5rem;
    cursor: pointer;
  }
  .commands li[aria-selected='true'] {
    background: var(--_act-wash);
    outline: 1px solid var(--_act);
  }
  .dropping {
    position: fixed;
    inset: 0.75rem;
    z-index: 10;
    display: grid;
    place-items: center;
    border: 2px dashed var(--_act);
    border-radius: var(--_radius);
    background: color-mix(in srgb, var(--_paper) 88%, transparent);
    color: var(--_ink);
    font-size: var(--_head);
    font-weight: 650;
    text-align: center;
    pointer-events: none;
  }
  .fill > .head {
    margin-block-end: 0.5rem;
    font-size: var(--_head);
    font-weight: 650;
  }
  .where-to {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 0.375rem 0.75rem;
    margin-block-end: 0.75rem;
  }
  .begin {
    display: grid;
    align-content: start;
    gap: 0.75rem;
    max-width: 72rem;
    padding: 1.5rem 0.75rem;
  }
  .begin h2 {
    font-size: var(--_head);
    font-weight: 650;
  }
  .begin h3 {
    font-size: var(--_lead);
    font-weight: 650;
  }
  .doors,
  .begin .cards {
    display: grid;
    grid-template-columns: repeat(auto-fill, minmax(min(15rem, 100%), 1fr));
    gap: 0.75rem;
  }
  .door {
    display: grid;
    min-height: var(--_on-site);
    padding: 0.75rem 1rem;
    text-align: start;
  }
  .door strong {
    font-size: var(--_lead);
  }
  .begin .cards li {
    display: grid;
    gap: 0.375rem;
    align-content: start;
    justify-items: start;
    padding: 0.75rem;
    border: 1px solid var(--_rule);
    border-radius: var(--_radius);
    background: var(--_raised);
  }
  .begin svg {
    width: 100%;
    height: 1.5rem;
    border: 1px solid var(--_rule);
  }
  .begin .bar.lead-in {
    fill: var(--_lead-in);
  }
  .begin .bar.usable {
    fill: var(--_usable);
  }
  .begin .bar:is(.curfew, .shift-break) {
    fill: var(--_curfew);
  }
  .begin .bar.lead-out {
    fill: var(--_lead-out);
  }
  .begin .bar.margin {
    fill: var(--_margin);
  }
  .urgent {
    max-width: 72rem;
  }
  .urgent table {
    margin-top: 0.75rem;
  }
  .urgent td:not(:nth-child(3)) {
    width: 1%;
    white-space: nowrap;
  }
  .shut {
    float: inline-end;
    justify-self: end;
  }
`;
