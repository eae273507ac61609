import { css } from 'lit';

/** What is written down during the shift, and what is decided: forms, units, corrections, files. */
export const shiftStyles = css`
  .records .units-done,
  .records .more {
    grid-column: 1 / -1;
  }
  .units-done {
    display: grid;
    grid-template-columns: minmax(0, 1fr) 17rem;
    gap: 0.375rem 0.75rem;
    align-items: center;
  }
  .units-done .count strong {
    font-size: var(--_head);
  }
  .units-done .count .quiet {
    display: block;
  }
  .more {
    display: flex;
    flex-wrap: wrap;
    gap: 0 1.5rem;
  }
  .more details[open] {
    flex-basis: 100%;
  }
  .live details > summary {
    color: var(--_act);
  }
  .clock-entry,
  .note,
  .file-buttons {
    display: flex;
    flex-wrap: wrap;
    gap: 0.5rem 0.75rem;
    align-items: end;
    padding-block: 0.25rem 0.5rem;
  }
  .live label {
    display: flex;
    flex-direction: column;
    gap: 0.125rem;
    color: var(--_quiet);
    font-size: var(--_text);
  }
  .lines h4 {
    margin: 0.375rem 0 0;
    font-size: var(--_lead);
  }
  .live :is(input, select) {
    min-height: var(--_on-site);
    min-width: 7rem;
    padding: 0.25rem 0.5rem;
    border: 1px solid var(--_rule);
    border-radius: var(--_radius);
    background: var(--_raised);
    color: var(--_ink);
    font: inherit;
    font-size: var(--_head);
  }
  .live input.clock {
    width: 7rem;
  }
  .live input[type='number'] {
    min-width: 0;
    width: 6rem;
    text-align: end;
  }
  .note label {
    flex: 1 1 12rem;
  }
  .note input {
    width: 100%;
  }
  .go-point {
    display: grid;
    grid-template-columns: minmax(0, 1fr) 17rem;
    gap: 0.375rem 0.75rem;
    align-items: center;
    padding-block: 0.5rem;
    border-bottom: 1px solid var(--_hair);
  }
  .go-point .name {
    display: flex;
    flex-direction: column;
    overflow-wrap: anywhere;
  }
  .go-point .buttons {
    display: grid;
    grid-template-columns: 1fr 1fr;
    gap: 0.5rem;
  }
  .live button.go {
    border-width: 2px;
    border-color: var(--_good);
  }
  .live button.no-go {
    border-width: 2px;
    border-color: var(--_bad);
  }
  .outcome {
    font-size: var(--_head);
    font-weight: 650;
  }
  .limit {
    display: flex;
    flex-wrap: wrap;
    justify-content: space-between;
    gap: 0 1rem;
    padding-block: 0.5rem;
    border-bottom: 1px solid var(--_hair);
  }
  .countdown {
    white-space: nowrap;
  }
  .deciding .countdown {
    font-weight: 650;
  }
  .deciding .countdown.past,
  .too-late {
    color: var(--_bad);
  }
  .too-late {
    display: block;
    font-weight: 600;
  }
  .hand-back {
    display: flex;
    flex-wrap: wrap;
    gap: 0.25rem 1rem;
    align-items: center;
  }
  .hand-back .handed {
    flex: 1 1 14rem;
    max-width: 24rem;
  }
  .handed-back {
    padding: 0.5rem 0.75rem;
    border-inline-start: 6px solid var(--_good);
    background: var(--_raised);
    font-size: var(--_head);
    font-weight: 650;
  }
  .handed-back.overrun {
    border-inline-start-color: var(--_bad);
  }
  .log .fault,
  .log-faults {
    display: block;
    margin-top: 0.25rem;
    padding: 0.25rem 0.625rem;
    border-inline-start: 4px solid var(--_bad);
    background: var(--_bad-wash);
    color: var(--_ink);
  }
  .log .correct {
    flex-basis: 100%;
  }
  .log s .written {
    text-decoration: none;
  }
  .bring-in input[type='file'] {
    max-width: 100%;
    padding: 0.5rem;
    font-size: var(--_lead);
  }
  .said p {
    padding-block: 0.25rem;
    overflow-wrap: anywhere;
  }
  .calendar {
    justify-self: start;
    align-self: start;
  }
  .ask {
    min-height: 1.5rem;
    color: inherit;
    text-decoration-style: dotted;
  }
  @container (max-width: 36rem) {
    .units-done,
    .go-point {
      grid-template-columns: minmax(0, 1fr);
    }
  }
`;
