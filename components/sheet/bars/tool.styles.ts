import { css } from 'lit';

/** Toolbar, bars, menu and the list of keys. */
export const toolStyles = css`
  .top,
  .bar {
    display: flex;
    flex-wrap: wrap;
    gap: 0.25rem 0.75rem;
    align-items: center;
    padding: 0.25rem 0.75rem;
    border-block-end: 1px solid var(--_hair);
  }
  .file {
    flex: 1 1 8rem;
    overflow: hidden;
    text-overflow: ellipsis;
    white-space: nowrap;
  }
  .tools {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
  }
  .tools button {
    border-color: transparent;
    background: none;
  }
  .tools button:hover,
  .tools [aria-expanded='true'],
  .tools [aria-pressed='true'] {
    border-color: var(--_act);
    background: var(--_act-wash);
  }
  .tools [aria-disabled='true'] {
    color: var(--_quiet);
    cursor: default;
  }
  .tools [aria-disabled='true'] svg {
    opacity: 0.5;
  }
  .tools svg {
    fill: none;
    stroke: currentColor;
    stroke-width: 1.6;
  }
  .tools .gap {
    width: 1px;
    height: 1.125rem;
    margin-inline: 0.375rem;
    background: var(--_hair);
  }
  .tools .dot {
    display: inline-block;
    width: 0.5rem;
    height: 0.5rem;
    margin-inline-start: 0.375rem;
    border-radius: 50%;
    background: var(--_act);
  }
  .tools .range {
    display: none;
  }
  .bar {
    background: var(--_paper);
    font-size: var(--_small);
  }
  .bar input[type='text'],
  .bar select {
    min-height: var(--_control);
    padding: 0.125rem 0.5rem;
    border: 1px solid var(--_rule);
    border-radius: var(--_radius);
    background: var(--_raised);
    color: var(--_ink);
    font: inherit;
  }
  .bar .wanted {
    flex: 0 1 16rem;
    min-width: 8rem;
  }
  .bar .plain {
    min-height: 1.5rem;
  }
  .bar .one {
    display: inline-flex;
    gap: 0.25rem;
    align-items: center;
  }
  .bar .one .plain {
    min-width: 1.5rem;
    text-align: center;
    text-decoration: none;
  }
  .bar .check,
  .bar .holds {
    display: inline-flex;
    gap: 0.375rem;
    align-items: center;
    min-height: 1.5rem;
  }
  .bar input[type='checkbox'] {
    width: 1rem;
    height: 1rem;
    margin: 0;
    accent-color: var(--_act);
  }
  .chip {
    border-color: var(--_act);
    border-radius: 1rem;
    background: var(--_act-wash);
  }
  .menu {
    position: fixed;
    inset: auto;
    margin: 0;
    padding: 0.25rem 0;
    overflow: auto;
    max-height: calc(100vh - 8px);
    border: 1px solid var(--_rule);
    border-radius: var(--_radius);
    background: var(--_raised);
    color: var(--_ink);
    box-shadow: 0 6px 24px color-mix(in oklab, black 22%, transparent);
  }
  .menu .title {
    padding: 0.375rem 0.75rem 0.125rem;
    color: var(--_quiet);
    font-size: var(--_small);
    font-weight: 600;
  }
  .menu [role='menuitem'] {
    display: flex;
    gap: 1.5rem;
    justify-content: space-between;
    width: 100%;
    padding: 0.125rem 0.75rem;
    border: 0;
    border-radius: 0;
    background: none;
    text-align: start;
  }
  .menu [role='menuitem']:hover,
  .menu [role='menuitem']:focus {
    outline-offset: -2px;
    background: var(--_act-wash);
  }
  kbd {
    color: var(--_quiet);
    font: inherit;
    font-size: var(--_small);
  }
  .help {
    max-width: min(56rem, calc(100vw - 2rem));
    max-height: calc(100vh - 2rem);
    padding: 1rem;
    border: 1px solid var(--_rule);
    border-radius: var(--_radius);
    background: var(--_raised);
    color: var(--_ink);
  }
  .help form {
    float: inline-end;
  }
  .places {
    columns: 20rem;
    column-gap: 2rem;
  }
  .places section {
    break-inside: avoid;
    margin-block-end: 1rem;
  }
  .places h3 {
    font-size: var(--_lead);
  }
  .places dl > div {
    display: flex;
    gap: 1rem;
    justify-content: space-between;
    padding-block: 0.125rem;
    border-block-end: 1px solid var(--_hair);
  }
  .places dt {
    max-width: 11rem;
  }
  .places dd {
    text-align: end;
  }
  @media (max-width: 30rem) {
    .tools button {
      padding-inline: 0.375rem;
    }
    .tools .gap {
      margin-inline: 0.125rem;
    }
  }
  @media (pointer: coarse) {
    .tools .range {
      display: inline-block;
    }
    .tools button,
    .bar button,
    .menu [role='menuitem'] {
      min-width: 44px;
      min-height: 44px;
    }
  }
`;
