import { html, type TemplateResult } from 'lit';

/** Text with a button that copies it. */
export function copyable(text: string, label: string): TemplateResult {
  const copy = async (event: Event): Promise<void> => {
    const button = event.currentTarget as HTMLButtonElement;
    const said = button.nextElementSibling!;
    try {
      await navigator.clipboard.writeText(text);
      said.textContent = 'Copied';
    } catch {
      said.textContent = 'The browser does not let this page copy: choose the text and copy it.';
    }
  };
  return html`<div class="copyable">
    <pre tabindex="0" role="region" aria-label=${label}><code>${text}</code></pre>
    <button type="button" @click=${copy} aria-label="Copy: ${label}">Copy</button>
    <span class="said" role="status"></span>
  </div>`;
}
