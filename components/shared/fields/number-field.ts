import { html, type TemplateResult } from 'lit';

/** A number to be entered. Bounds count as inside. */
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
