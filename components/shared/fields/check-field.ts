import { html, type TemplateResult } from 'lit';

/** A box to tick with what it means. */
export function checkField(
  label: string,
  checked: boolean,
  change: (checked: boolean) => void,
): TemplateResult {
  return html`<label class="field check"
    ><input
      type="checkbox"
      .checked=${checked}
      @change=${(event: Event) => change((event.currentTarget as HTMLInputElement).checked)}
    /><span>${label}</span></label
  >`;
}
