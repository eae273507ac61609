import { css } from 'lit';

export const styles = css`
  header {
    display: flex;
    align-items: start;
    gap: 0.75rem;
    margin-bottom: 0.375rem;
  }
  header > div {
    flex: 1;
    min-width: 0;
  }
  h2 {
    font-size: var(--_lead);
    font-weight: 650;
    overflow-wrap: anywhere;
  }
  .barred,
  .shortfall {
    margin-block: 0.375rem;
    padding: 0.375rem 0.625rem;
    border-inline-start: 3px solid var(--_bad);
    background: var(--_bad-wash);
  }
  .step {
    display: grid;
    grid-template-columns: minmax(0, 1fr) auto;
    gap: 0.0625rem 0.75rem;
    width: 100%;
    min-height: 0;
    padding: 0.25rem 0.375rem;
    border: 0;
    border-bottom: 1px solid var(--_hair);
    border-radius: 0;
    background: none;
    text-align: start;
    line-height: 1.3;
  }
  .step:hover {
    background: var(--_act-wash);
  }
  .step[aria-pressed='true'] {
    background: var(--_act-wash);
    box-shadow: inset 3px 0 0 var(--_act);
  }
  .step.sum {
    border-bottom-color: var(--_rule);
    font-weight: 650;
  }
  .step .label {
    overflow-wrap: anywhere;
  }
  .step .when {
    color: var(--_quiet);
    font-size: var(--_small);
    font-weight: 400;
  }
  .step {
    align-items: center;
  }
  .step .when {
    text-align: end;
    white-space: nowrap;
  }
  .track {
    stroke: var(--_hair);
  }
  .gross {
    fill: var(--_ink);
  }
  @media print {
    :host {
      page: possession-window;
    }
    .picture {
      margin-bottom: 4mm;
    }
    .step {
      break-inside: avoid;
    }
    .step[aria-pressed='true'] {
      box-shadow: none;
    }
  }
  @media (forced-colors: active) {
    .gross {
      fill: CanvasText;
    }
  }
`;
