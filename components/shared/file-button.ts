import { html, type TemplateResult } from 'lit';

/** A button that asks for a file and hands it on; the same file can be chosen again. */
export const fileButton = (
  words: string,
  accept: string,
  take: (file: File) => void,
): TemplateResult =>
  html`<label class="bring-in"
    >${words}<input
      type="file"
      accept=${accept}
      @change=${(event: Event) => {
        const input = event.currentTarget as HTMLInputElement;
        const file = input.files?.[0];
        input.value = '';
        if (file) take(file);
      }}
  /></label>`;
