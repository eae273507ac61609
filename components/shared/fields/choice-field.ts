import { html, type TemplateResult } from 'lit';

export interface ChoiceField<Value extends string> {
  readonly label: string;
  readonly value: Value;
  /** Each value with its word, in the order they are listed. */
  readonly choices: readonly (readonly [value: Value, word: string])[];
  readonly change: (value: Value) => void;
}

/** A labelled choice of one of a few values. */
export function choiceField<Value extends string>({
  label,
  value,
  choices,
  change,
}: ChoiceField<Value>): TemplateResult {
  return html`<label class="field"
    ><span>${label}</span>
    <select
      @change=${(event: Event) => change((event.currentTarget as HTMLSelectElement).value as Value)}
    >
      ${choices.map(
        ([choice, word]) =>
          html`<option value=${choice} ?selected=${choice === value}>${word}</option>`,
      )}
    </select></label
  >`;
}
