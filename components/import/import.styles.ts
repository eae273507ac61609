import { css } from 'lit';

export const styles = css`
  .take {
    display: grid;
    grid-template-columns: repeat(auto-fit, minmax(min(100%, 18rem), 1fr));
    gap: 0.75rem;
  }
  .drop {
    display: flex;
    flex-direction: column;
    justify-content: center;
    gap: 0.5rem;
    min-height: 8rem;
    padding: 0.875rem;
    border: 1px dashed var(--_rule);
    border-radius: var(--_radius);
    background: var(--_sunk);
  }
  .drop.over {
    border-style: solid;
    border-color: var(--_act);
    background: var(--_act-wash);
  }
  .drop p strong {
    font-size: var(--_lead);
  }
  .drop button {
    align-self: start;
  }
  label {
    display: block;
    margin-bottom: 0.25rem;
    color: var(--_quiet);
    font-size: var(--_small);
    font-weight: 600;
  }
  textarea {
    display: block;
    width: 100%;
    min-height: 5rem;
    padding: 0.5rem;
    border: 1px solid var(--_rule);
    border-radius: var(--_radius);
    background: var(--_raised);
    color: inherit;
    font: inherit;
    font-family: ui-monospace, 'Cascadia Mono', 'DejaVu Sans Mono', monospace;
    font-size: var(--_small);
    resize: vertical;
    white-space: pre;
  }
  .paste button {
    margin-top: 0.5rem;
  }
  .now h2 {
    margin-top: 1.25rem;
    padding-bottom: 0.25rem;
    font-size: var(--_lead);
    font-weight: 650;
  }
  .now td:last-child {
    min-width: 14rem;
    color: var(--_quiet);
  }
  .now tbody th {
    color: var(--_ink);
  }
  .needs {
    border-top: 1px solid var(--_rule);
  }
  .needs div {
    display: grid;
    grid-template-columns: 6.5rem minmax(0, 1fr);
    padding: 0.25rem 0.5rem;
    border-bottom: 1px solid var(--_hair);
  }
  .needs dt {
    font-weight: 600;
  }
  .file {
    margin-top: 1rem;
    padding-top: 0.625rem;
    border-top: 1px solid var(--_rule);
  }
  .file h3 {
    font-size: var(--_lead);
    font-weight: 650;
    overflow-wrap: anywhere;
  }
  .facts {
    display: flex;
    flex-wrap: wrap;
    gap: 0.125rem 1.25rem;
    margin-block: 0.25rem 0.5rem;
  }
  .facts div {
    display: flex;
    gap: 0.375rem;
  }
  .facts dt {
    color: var(--_quiet);
  }
  .heads {
    display: flex;
    flex-wrap: wrap;
    gap: 0.25rem;
  }
  .heads li {
    padding: 0.0625rem 0.5rem;
    border: 1px solid var(--_hair);
    border-radius: var(--_radius);
    background: var(--_sunk);
    font-size: var(--_small);
  }
  .heads li.unread {
    border-style: dashed;
    background: none;
    color: var(--_quiet);
  }
  .file h4 {
    margin: 1rem 0 0.25rem;
    font-size: var(--_text);
    font-weight: 650;
  }
  fieldset {
    margin: 0.625rem 0 0;
    padding: 0.5rem 0.75rem 0.75rem;
    min-width: 0;
    border: 1px solid var(--_hair);
    border-inline-start: 3px solid var(--_act);
    border-radius: var(--_radius);
    background: var(--_raised);
  }
  legend {
    padding-inline: 0.25rem;
    font-weight: 650;
  }
  .choices {
    display: grid;
    grid-template-columns: repeat(auto-fit, minmax(min(100%, 17rem), 1fr));
    gap: 0.625rem 1rem;
  }
  .choice {
    min-width: 0;
  }
  .choice p {
    margin-top: 0.125rem;
    font-size: var(--_small);
  }
  select {
    display: block;
    width: 100%;
    min-height: var(--_control);
    margin-top: 0.125rem;
    padding-block: 0.25rem;
    padding-inline: 0.5rem 1.5rem;
    border: 1px solid var(--_rule);
    border-block-end-width: 2px;
    border-radius: var(--_radius);
    appearance: none;
    background:
      linear-gradient(45deg, transparent 50%, var(--_act) 50%) right 0.75rem center / 0.3125rem
        0.3125rem no-repeat,
      linear-gradient(-45deg, transparent 50%, var(--_act) 50%) right 0.4375rem center / 0.3125rem
        0.3125rem no-repeat,
      var(--_paper);
    color: var(--_ink);
    font: inherit;
    font-size: var(--_text);
    font-weight: 400;
    text-overflow: ellipsis;
  }
  select:hover {
    border-color: var(--_act);
  }
  .way {
    display: flex;
    gap: 0.5rem;
    align-items: start;
    min-height: var(--_control);
    margin: 0;
    padding-block: 0.25rem;
    color: var(--_ink);
    font-size: var(--_text);
    font-weight: 400;
  }
  .way input {
    flex: none;
    width: 1.125rem;
    height: 1.125rem;
    margin: 0.0625rem 0 0;
    border: 1px solid var(--_rule);
    border-radius: 50%;
    appearance: none;
    background: var(--_paper);
  }
  .way input:checked {
    border-color: var(--_act);
    background: radial-gradient(circle, var(--_act) 0 45%, transparent 50%) var(--_paper);
  }
  .way:has(:checked) {
    background: linear-gradient(90deg, var(--_act-wash), transparent);
  }
  .way strong {
    font-weight: 600;
  }
  .columns th[scope='row'] {
    color: var(--_ink);
    overflow-wrap: anywhere;
  }
  .columns td:nth-child(2) {
    min-width: 11rem;
  }
  .columns .unread th[scope='row'] {
    color: var(--_quiet);
    font-weight: 400;
  }
  .samples {
    min-width: 12rem;
    color: var(--_quiet);
    overflow-wrap: anywhere;
  }
  .rows td {
    min-width: 6.5rem;
    max-width: 22rem;
    overflow-wrap: anywhere;
  }
  .rows td.bad {
    background: var(--_bad-wash);
    box-shadow: inset 3px 0 0 var(--_bad);
  }
  td .told {
    display: block;
    min-width: 12rem;
    font-size: var(--_small);
    font-weight: 400;
  }
  .busy {
    display: grid;
    grid-template-columns: auto minmax(4rem, 1fr) auto;
    gap: 0.75rem;
    align-items: center;
    margin-top: 1rem;
  }
  .busy svg {
    width: 100%;
    height: 0.25rem;
    background: var(--_sunk);
  }
  .way-there {
    fill: var(--_act);
  }
  :dir(rtl) select {
    background-position:
      left 0.4375rem center,
      left 0.75rem center,
      0 0;
  }
  @media (forced-colors: active) {
    select {
      appearance: auto;
    }
    .way input {
      appearance: auto;
    }
    .way-there {
      fill: Highlight;
    }
    .rows td.bad {
      outline: 2px solid CanvasText;
      outline-offset: -2px;
    }
  }
  .faults {
    margin-top: 0.5rem;
  }
  .faults td:first-child {
    white-space: nowrap;
  }
  .wrong {
    color: var(--_bad);
    font-weight: 600;
  }
  .note {
    color: var(--_warn);
    font-weight: 600;
  }
  .end {
    position: sticky;
    bottom: 0;
    z-index: 1;
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 0.5rem 0.75rem;
    margin-top: 1rem;
    padding-block: 0.75rem;
    background: var(--_paper);
  }

  .asks ul {
    display: grid;
    gap: 0.5rem;
    margin: 0.5rem 0;
    padding: 0;
    list-style: none;
  }

  .asks li,
  .asks .answers {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 0.375rem 0.75rem;
  }

  .asks li .answers {
    margin-inline-start: auto;
  }
`;
