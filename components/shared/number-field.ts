import { css, html, type TemplateResult } from 'lit';

export interface NumberField {
  readonly label: string;
  readonly value: number;
  readonly unit: string;
  readonly min: number;
  readonly max: number;
  readonly step?: number | 'any';
  /** Called with a value inside the bounds; one outside is told of by the field and goes no further. */
  readonly change: (value: number) => void;
}

/** A labelled number with its unit, which tells of a new value once it is whole: on leaving the field or Enter. */
export function numberField({
  label,
  value,
  unit,
  min,
  max,
  step = 'any',
  change,
}: NumberField): TemplateResult {
  return html`<label class="field"
    ><span>${label}</span>
    <span class="entry"
      ><input
        type="number"
        .value=${String(value)}
        min=${min}
        max=${max}
        step=${step}
        @change=${(event: Event) => {
          const input = event.currentTarget as HTMLInputElement;
          if (input.value !== '' && input.reportValidity()) change(input.valueAsNumber);
        }}
      /><span class="unit">${unit}</span></span
    ></label
  >`;
}

/** Fields in rows, sections, head and tables of the elements of people, neighbours and weather. */
export const siteStyles = css`
  :host {
    container-type: inline-size;
  }
  .head,
  section {
    padding: 0.75rem;
  }
  h2 {
    font-size: var(--_head);
    font-weight: 650;
  }
  h3 {
    margin-bottom: 0.375rem;
    font-size: var(--_lead);
    font-weight: 650;
  }
  section > * + h3 {
    margin-top: 1rem;
  }
  section > .fields,
  section > table,
  section > .picture {
    margin-block: 0.5rem;
  }
  figure {
    margin-bottom: 0.5rem;
  }
  figcaption {
    font-weight: 600;
  }
  section > p {
    max-width: 90ch;
    margin-bottom: 0.375rem;
  }
  .figures {
    display: flex;
    flex-wrap: wrap;
    gap: 0.5rem 1.75rem;
    padding: 0.75rem;
  }
  .figures strong {
    display: block;
    font-size: var(--_figure);
    font-weight: 650;
    line-height: 1.1;
  }
  .figures .bad strong,
  .bad-text {
    color: var(--_bad);
    font-weight: 650;
  }
  .good-text {
    color: var(--_good);
  }
  .fields {
    display: flex;
    flex-wrap: wrap;
    gap: 0.5rem 1rem;
    align-items: end;
  }
  .field {
    display: inline-flex;
    flex-direction: column;
    gap: 0.125rem;
    color: var(--_quiet);
    font-size: var(--_small);
  }
  .field.check {
    flex-direction: row;
    align-items: center;
    gap: 0.5rem;
    min-height: 2rem;
    color: var(--_ink);
    font-size: var(--_text);
  }
  .entry {
    display: inline-flex;
    align-items: center;
    gap: 0.375rem;
  }
  input,
  select {
    min-height: 2rem;
    padding: 0.25rem 0.375rem;
    border: 1px solid var(--_rule);
    border-radius: var(--_radius);
    background: var(--_raised);
    color: var(--_ink);
    font: inherit;
    font-size: var(--_text);
  }
  input[type='number'] {
    width: 5.5rem;
    text-align: end;
  }
  input[type='checkbox'] {
    width: 1.5rem;
    min-height: 1.5rem;
    margin: 0;
    accent-color: var(--_act);
  }
  .source {
    display: block;
    color: var(--_quiet);
    font-size: var(--_small);
    font-weight: 400;
  }
  .example {
    display: flex;
    flex-wrap: wrap;
    gap: 0.375rem 1rem;
    align-items: center;
    margin-block: 0.5rem;
    padding: 0.375rem 0.625rem;
    border-inline-start: 4px solid var(--_warn);
    background: var(--_sunk);
  }
  .choice {
    display: flex;
    flex-wrap: wrap;
    gap: 0.25rem;
    margin-bottom: 0.5rem;
  }
  .choice button[aria-pressed='true'] {
    border-color: var(--_act);
    background: var(--_act);
    color: var(--_paper);
    font-weight: 600;
  }
  th[scope='row'] {
    color: var(--_ink);
    font-weight: 600;
    overflow-wrap: anywhere;
  }
  td {
    overflow-wrap: anywhere;
  }
  .picture {
    overflow: hidden;
  }
  svg text.soft {
    fill: var(--_quiet);
  }
  .hair {
    stroke: var(--_hair);
  }
  .rule {
    stroke: var(--_rule);
  }
  .shut {
    fill: var(--_bad-wash);
    stroke: var(--_bad);
    stroke-width: 0.75;
  }
  .slash {
    stroke: var(--_bad);
    stroke-width: 1.25;
  }
  .mark {
    fill: var(--_bad);
  }
  .narrow {
    display: none;
  }
  @container (max-width: 39.99rem) {
    .narrow {
      display: inline;
      color: var(--_quiet);
      font-weight: 400;
    }
    table.cards thead {
      position: absolute;
      overflow: hidden;
      width: 1px;
      height: 1px;
      clip-path: inset(50%);
    }
    table.cards tr {
      display: block;
      padding-block: 0.5rem;
      border-bottom: 1px solid var(--_hair);
    }
    table.cards :is(td, th) {
      display: block;
      width: auto;
      padding: 0.0625rem 0;
      border: 0;
      text-align: start;
      white-space: normal;
    }
  }
  @media print {
    button,
    .fields {
      display: none;
    }
  }
  @media (forced-colors: active) {
    .shut,
    .mark {
      stroke: CanvasText;
      fill: Canvas;
    }
    .mark {
      fill: CanvasText;
    }
    .slash,
    .rule {
      stroke: CanvasText;
    }
    .hair {
      stroke: GrayText;
    }
    svg text,
    svg text.soft {
      fill: CanvasText;
    }
    .choice button[aria-pressed='true'] {
      forced-color-adjust: none;
      border-color: Highlight;
      background: Highlight;
      color: HighlightText;
    }
  }
`;
