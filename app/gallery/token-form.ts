import { html, render, type TemplateResult } from 'lit';
import { copyable } from './copyable.js';
import type { Token } from './manifest.js';

const chosen = new Map<string, string>();

/** Every token of the manifest with a field; what is typed holds for all elements of the page. */
export function tokenForm(tokens: readonly Token[]): TemplateResult {
  const plain = tokens.filter((token) => token.syntax !== '<color>');
  const colours = tokens.filter((token) => token.syntax === '<color>');
  return html`<section class="tokens" id="tokens" aria-labelledby="tokens-name">
    <h2 id="tokens-name">Tokens to try</h2>
    <p>
      Custom properties that every element reads. What is typed here holds for all elements of this
      page; an empty field is the default. A colour for a light and a dark page is written
      <code>light-dark(#005587, #86c9f2)</code>.
    </p>
    <form
      @input=${take}
      @submit=${(event: Event) => event.preventDefault()}
      @reset=${(event: Event) => {
        for (const token of tokens) set(token.name, '');
        announce(event.currentTarget as HTMLElement);
      }}
    >
      <div class="fields">${plain.map(field)}</div>
      <details>
        <summary>Colours</summary>
        <div class="fields">${colours.map(field)}</div>
      </details>
      <button type="reset">All as they were</button>
    </form>
    <div class="chosen">${announcement()}</div>
  </section>`;
}

function field({ name, default: value, description }: Token): TemplateResult {
  return html`<div class="field">
    <label for=${name}>${name.replace('--possession-', '')}</label>
    <input
      id=${name}
      name=${name}
      placeholder=${value}
      aria-describedby="${name}-meaning"
      autocomplete="off"
      spellcheck="false"
    />
    <span class="meaning" id="${name}-meaning">${description}</span>
  </div>`;
}

function take(event: Event): void {
  const input = event.target as HTMLInputElement;
  set(input.name, input.value.trim());
  announce(event.currentTarget as HTMLElement);
}

function set(name: string, value: string): void {
  if (value === '') {
    chosen.delete(name);
    document.documentElement.style.removeProperty(name);
  } else {
    chosen.set(name, value);
    document.documentElement.style.setProperty(name, value);
  }
}

function announce(form: HTMLElement): void {
  const place = form.parentElement?.querySelector<HTMLElement>('.chosen');
  if (place) render(announcement(), place);
}

function announcement(): TemplateResult {
  const lines = [...chosen].map(([name, value]) => `  ${name}: ${value};`);
  return chosen.size === 0
    ? html`<p class="more">Nothing is changed.</p>`
    : copyable(`:root {\n${lines.join('\n')}\n}`, 'Style sheet of the tokens');
}
